import Barwright

/// A line of text with its place in its list, since two lines may say the same.
public struct Line: Sendable, Equatable, Identifiable {
    public let id: Int
    public let text: String
}

extension [String] {
    /// The same, to be listed.
    public var lines: [Line] { enumerated().map { Line(id: $0.offset, text: $0.element) } }
}

/// How a row stands in a sheet.
public enum Level: Sendable, Equatable {
    case heading
    case exercise
    case set
}

extension Row {
    /// How it stands.
    public var level: Level {
        switch depth {
        case 0: .heading
        case 1: .exercise
        default: .set
        }
    }

    /// Its text; what is done is marked with a sign, not by its colour alone.
    public var marked: String { done ? "✓ \(text)" : text }

    /// A single key stands beside its words, several under them.
    public var single: Key? { keys.count == 1 ? keys.first : nil }

    public var several: [Key] { keys.count == 1 ? [] : keys }
}

extension Key {
    /// What stands on it; what is chosen is marked with a sign.
    public var face: String { chosen ? "✓ \(label)" : label }
}

/// The keys under a sheet: the one thing to do now, where there is one, and the others.
public struct Foot: Sendable, Equatable {
    public let now: Key?
    public let others: [Key]

    /// `begins`: the sheet's first key, where it does something, is the one thing to do now.
    init(_ keys: [Key], begins: Bool) {
        if begins, let first = keys.first, first.enabled, case .do = first.action {
            now = first
            others = Array(keys.dropFirst())
        } else {
            now = nil
            others = keys
        }
    }
}

extension TodayScreen {
    public var foot: Foot { Foot(keys, begins: true) }
}

extension TallyScreen {
    public var foot: Foot { Foot(keys, begins: false) }
}

extension WeeksScreen {
    public var foot: Foot { Foot(keys, begins: false) }
}

extension LiftScreen {
    public var foot: Foot { Foot(keys, begins: false) }
}

extension BalanceScreen {
    public var foot: Foot { Foot(keys, begins: false) }
}

extension EquipmentScreen {
    public var foot: Foot { Foot(keys, begins: false) }
}

extension PlanScreen {
    public var foot: Foot { Foot(keys, begins: true) }
}

extension WeekOfPlan {
    /// Its title; where we are is marked with a sign.
    public var marked: String { current ? "▸ \(title)" : title }
}

extension BarZone {
    /// There is something beside the total.
    public var hasMore: Bool { drawn || !bar.isEmpty || !counts.isEmpty || holds != nil }
}

extension ThumbZone {
    /// The small keys, in their order.
    public var small: [Key] { beside + [ended, undo, redo, more].compactMap { $0 } }
}

/// A fault with its place in the list.
public struct PlacedFault: Sendable, Equatable, Identifiable {
    public let id: Int
    public let fault: FileFault
}

extension PlanScreen {
    /// Its faults, to be listed.
    public var placedFaults: [PlacedFault] {
        faults.enumerated().map { PlacedFault(id: $0.offset, fault: $0.element) }
    }
}
