import Barwright
import Foundation

/// A rest for the system's own timer text, which counts by itself: nothing of ours runs meanwhile.
public struct Countdown: Sendable, Equatable {
    /// From the reading to the deadline; when the rest is over, from the deadline on.
    public let interval: ClosedRange<Date>
    /// It counts down, or up when the rest is over.
    public let down: Bool
    /// Stands before the figures: the sign of a rest that is over.
    public let sign: String

    /// `left` is what the core says: the deadline follows from it and not from a wall clock that may
    /// have been set meanwhile.
    init(_ rest: RunningRest, at reading: Reading) {
        let now = Date(timeIntervalSince1970: Double(reading.wallMs) / 1000)
        let deadline = now.addingTimeInterval(Double(rest.leftMs) / 1000)
        if rest.over || deadline <= now {
            // As long as a timer text takes: a day and more.
            interval = min(deadline, now)...now.addingTimeInterval(Self.longest)
            down = false
            sign = "+"
        } else {
            interval = now...deadline
            down = true
            sign = ""
        }
    }

    private static let longest: TimeInterval = 100 * 3600
}
