import Barwright
import Foundation

/// Where a reading of the time comes from.
public protocol Clocks: Sendable {
    /// What the clocks show now.
    func read() -> Reading
}

/// The device's own: wall time with its offset, time since it started counting sleep, and which
/// start it is.
public struct DeviceClocks: Clocks {
    public init() {}

    public func read() -> Reading {
        let now = Date()
        return Reading(
            wallMs: Int64(now.timeIntervalSince1970 * 1000),
            offsetMinutes: Int32(TimeZone.current.secondsFromGMT(for: now) / 60),
            bootMs: sinceStart(),
            bootId: start())
    }

    /// Milliseconds since the device started, counting sleep; nil where it can't be told.
    private func sinceStart() -> Int64? {
        var time = timespec()
        #if canImport(Darwin)
            // Apple's counts sleep under this name; its CLOCK_UPTIME_RAW does not.
            let clock = CLOCK_MONOTONIC_RAW
        #else
            let clock = CLOCK_BOOTTIME
        #endif
        guard clock_gettime(clock, &time) == 0 else { return nil }
        return Int64(time.tv_sec) * 1000 + Int64(time.tv_nsec) / 1_000_000
    }

    /// Tells one start from another; nil where the system does not say: then the wall clock rules.
    private func start() -> String? {
        #if canImport(Darwin)
            var text = [CChar](repeating: 0, count: 64)
            var size = text.count
            guard sysctlbyname("kern.bootsessionuuid", &text, &size, nil, 0) == 0 else { return nil }
            let id = String(
                decoding: text.prefix(while: { $0 != 0 }).map(UInt8.init(bitPattern:)), as: UTF8.self)
        #else
            guard let text = try? String(contentsOfFile: "/proc/sys/kernel/random/boot_id", encoding: .utf8)
            else { return nil }
            let id = text.trimmingCharacters(in: .whitespacesAndNewlines)
        #endif
        return id.isEmpty ? nil : id
    }
}
