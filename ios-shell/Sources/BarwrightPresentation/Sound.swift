import Foundation

/// What a notification sounds like: files written into the container, so that the system plays them
/// with the screen dark and stays silent when the device is.
public enum Sound: Sendable, Equatable, CaseIterable {
    /// Three short marks, a second apart.
    case marks
    /// One longer mark.
    case over

    /// Milliseconds before the deadline that the marks begin.
    static let marksLead: Int64 = 3000

    /// The file's name in the folder `Library/Sounds`.
    public var file: String {
        switch self {
        case .marks: "rest-marks.wav"
        case .over: "rest-over.wav"
        }
    }

    /// Writes what is not there yet into `library`.
    public static func write(to library: URL) throws {
        let folder = library.appendingPathComponent("Sounds", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        for sound in allCases {
            let file = folder.appendingPathComponent(sound.file)
            if !FileManager.default.fileExists(atPath: file.path) {
                try sound.wave.write(to: file, options: .atomic)
            }
        }
    }

    /// When each tone begins and how long it is, in seconds.
    private var tones: [(from: Double, long: Double)] {
        switch self {
        case .marks: [(0, 0.08), (1, 0.08), (2, 0.08)]
        case .over: [(0, 0.4)]
        }
    }

    /// Sixteen-bit mono at 22 050 Hz, in a RIFF file.
    var wave: Data {
        let rate = 22_050.0
        let ends = tones.map { $0.from + $0.long }.max() ?? 0
        var samples = [Int16](repeating: 0, count: Int(ends * rate))
        for tone in tones {
            let first = Int(tone.from * rate)
            let count = Int(tone.long * rate)
            for at in 0..<count where first + at < samples.count {
                let time = Double(at) / rate
                // Soft edges of five milliseconds, so that nothing clicks.
                let edge = min(1, min(time, tone.long - time) / 0.005)
                samples[first + at] = Int16(sin(2 * .pi * 880 * time) * max(0, edge) * 24_000)
            }
        }
        let bytes = samples.count * 2
        var data = Data()
        func number<N: FixedWidthInteger>(_ number: N) {
            withUnsafeBytes(of: number.littleEndian) { data.append(contentsOf: $0) }
        }
        data.append(contentsOf: "RIFF".utf8)
        number(UInt32(36 + bytes))
        data.append(contentsOf: "WAVEfmt ".utf8)
        number(UInt32(16))
        number(UInt16(1))
        number(UInt16(1))
        number(UInt32(rate))
        number(UInt32(rate * 2))
        number(UInt16(2))
        number(UInt16(16))
        data.append(contentsOf: "data".utf8)
        number(UInt32(bytes))
        samples.forEach(number)
        return data
    }
}
