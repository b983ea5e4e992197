import Barwright

/// What the presentation asks of the device. The app carries it out; a test writes it down.
@MainActor
public protocol Device: AnyObject {
    /// Notifications to come; they replace every one that was asked for before.
    func notify(_ notices: [Notice])
    /// No notification is wanted any more, and none that was shown is to stay.
    func withdrawNotices()
    /// A mark to be felt.
    func feel(_ mark: Felt)
    /// Words for who has the screen read out; nothing for anyone else.
    func announce(_ words: String)
    /// Words to be spoken.
    func speak(_ words: String)
    /// The screen stays on, or no longer.
    func keepAwake(_ on: Bool)
    /// A file to be offered to whoever the lifter chooses.
    func share(path: String, mediaType: String)
    /// A file is to be chosen; it comes back by `Presenter.picked`.
    func pick(_ kind: FileKind)
    /// Calls `Presenter.lookAgain` once after so many milliseconds, and forgets what was asked
    /// before; nil asks for nothing.
    func lookAgain(after milliseconds: Int64?)
}

/// A mark to be felt.
public enum Felt: Sendable, Equatable {
    /// A set was recorded.
    case recorded
    /// Something was taken back or refused.
    case changed
    /// A rest is over, while the program is looked at.
    case over
}

/// A notification to come.
public struct Notice: Sendable, Equatable {
    /// Its name; one of the same name takes its place.
    public let id: String
    /// Seconds from now, more than none.
    public let after: Double
    /// Its title and second line; both empty for one that is only heard.
    public let title: String
    public let text: String
    /// What is heard.
    public let sound: Sound
    /// What can be tapped on it.
    public let keys: [NoticeKey]
    /// The part of the session that the keys were made for.
    public let part: String?
}

/// A key on a notification.
public struct NoticeKey: Sendable, Equatable {
    public let id: String
    public let label: String
}

extension Notice {
    /// Every name there is.
    public static let marks = "marks"
    public static let over = "over"

    /// The notifications of a ring: three short marks before the deadline, one at it. None for a
    /// deadline that is past.
    static func ring(_ ring: RingAt, floor: FloorScreen?, at reading: Reading) -> [Notice] {
        let left = ring.left(at: reading)
        guard left > 0 else { return [] }
        let end = Notice(
            id: over, after: seconds(left), title: ring.text, text: ring.next, sound: .over,
            keys: floor.map(keys) ?? [], part: floor?.part)
        // A pause too short for the marks has its end alone.
        let lead = left - Sound.marksLead
        guard lead > 0 else { return [end] }
        return [
            Notice(
                id: marks, after: seconds(lead), title: "", text: "", sound: .marks, keys: [],
                part: nil),
            end,
        ]
    }

    /// The keys that record, in the floor's own order, then longer; there is room for three.
    static func keys(_ floor: FloorScreen) -> [NoticeKey] {
        offered(floor).prefix(3).map { NoticeKey(id: $0.id, label: $0.label) }
    }

    /// The key of a notification, as the floor has it now; nil when the floor has gone on: a
    /// notification that is behind records nothing on the next set.
    static func key(_ id: String, part: String?, on floor: FloorScreen) -> Key? {
        guard floor.part == part else { return nil }
        return offered(floor).first { $0.id == id }
    }

    private static func offered(_ floor: FloorScreen) -> [Key] {
        let thumb = floor.thumb
        let keys = [thumb.main].compactMap { $0 } + thumb.beside + [floor.rest?.longer].compactMap { $0 }
        return keys.filter { key in
            guard case .do = key.action else { return false }
            return key.enabled
        }
    }

    private static func seconds(_ milliseconds: Int64) -> Double { Double(milliseconds) / 1000 }
}

/// A ring as the core asks for it.
struct RingAt: Equatable {
    let wallMs: Int64
    let bootMs: Int64?
    let text: String
    let next: String

    /// Milliseconds until it: by the boot clock where both sides have one.
    func left(at reading: Reading) -> Int64 {
        if let deadline = bootMs, let now = reading.bootMs { return deadline - now }
        return wallMs - reading.wallMs
    }
}
