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

extension [Key] {
    /// So wide, in points, that no word on these keys is broken, where a bold letter is so wide on
    /// average; with the room at a key's sides, and never narrower than eleven letters are.
    public func narrowest(letter: Double) -> Double {
        let longest = map { $0.face.split(separator: " ").map(\.count).max() ?? 0 }.max() ?? 0
        return Swift.max(11 * letter, Double(longest) * letter + 16)
    }
}

extension Key {
    /// What stands on it; what is chosen is marked with a sign.
    public var face: String { chosen ? "✓ \(label)" : label }
}

/// The keys under a sheet: the one thing to do now, a file to open, and the others. More keys than
/// a thumb takes in stand at the sheet's end.
public struct Foot: Sendable, Equatable {
    public let now: Key?
    public let file: Place?
    /// What the sheet shows as a file, to be handed on.
    public let onward: Place?
    /// Handing it on is what the sheet is for: it stands with the keys, not at the sheet's end.
    public let handsOn: Bool
    public let few: [Key]
    public let many: [Key]

    /// `begins`: the sheet's first key, where it does something, is the one thing to do now.
    init(_ keys: [Key], begins: Bool = false, file: Place? = nil, onward: FormFile? = nil) {
        var others = keys
        if begins, let first = keys.first, first.enabled, case .do = first.action {
            now = first
            others.removeFirst()
        } else {
            now = nil
        }
        self.file = file
        self.onward = onward.map { file in
            Place(label: Words.handOn, tap: .handOn(name: file.name, text: file.text))
        }
        handsOn = onward != nil && now == nil && file == nil && others.count <= Self.mostBesideFile
        let fit = others.count <= Self.most
        few = fit ? others : []
        many = fit ? [] : others
    }

    /// There is nothing to tap.
    public var isEmpty: Bool { now == nil && file == nil && !handsOn && few.isEmpty }

    private static let most = 6
    private static let mostBesideFile = 2
}

extension Place {
    static let openPlan = Place(label: Words.openPlan, tap: .pick(.plan))
    static let openGym = Place(label: Words.openGym, tap: .pick(.gym))
}

extension TodayScreen {
    /// With nothing on, a plan is the first thing there is to do.
    public var foot: Foot { Foot(keys, begins: true, file: rows.isEmpty ? .openPlan : nil) }
}

extension TallyScreen {
    public var foot: Foot { Foot(keys) }
}

extension WeeksScreen {
    public var foot: Foot { Foot(keys) }
}

extension LiftScreen {
    public var foot: Foot { Foot(keys) }
}

extension BalanceScreen {
    public var foot: Foot { Foot(keys) }
}

extension EquipmentScreen {
    public var foot: Foot { Foot(keys, file: .openGym, onward: file) }
}

extension CareScreen {
    public var foot: Foot { Foot(keys) }
}

extension PlanScreen {
    public var foot: Foot { Foot(keys, begins: true, file: .openPlan) }
}

extension FormScreen {
    public var foot: Foot { Foot(keys, file: planFile ? .openPlan : nil, onward: file) }
}

extension FormRow {
    /// How it stands in a form.
    public var level: Level { depth == 0 ? .heading : .set }

    /// It has a value that is stepped: between its keys stands what it says.
    public var isStepped: Bool { down != nil || up != nil }

    /// Its value can be typed.
    public var isTyped: Bool { field != nil }

    /// What stands between its steps, to be typed over.
    public var figure: String { value.isEmpty ? Words.type : value }

    /// What it is, with what it says where that stands between no steps.
    public var words: String { isStepped || value.isEmpty ? text : "\(text): \(value)" }
}

extension NotShownScreen {
    public var foot: Foot { Foot(keys) }

    /// What failed, and what to send the makers where there is anything.
    public var lines: [String] { [reason, report].filter { !$0.isEmpty } }
}

extension WeekOfPlan {
    /// Its title; where we are is marked with a sign.
    public var marked: String { current ? "▸ \(title)" : title }
}

extension BarZone {
    /// The bar's name; the line says it where nothing is drawn.
    public var name: String { line.isEmpty ? bar : "" }

    /// There is something beside the total.
    public var hasMore: Bool { drawn || !name.isEmpty || !counts.isEmpty || holds != nil }
}

extension Figure {
    public var words: String { "\(text) \(unit)" }
}

extension Panel {
    /// Digits: they lie as on any pad.
    public var isPad: Bool { id == "pad" }
}

extension FloorScreen {
    /// A rest counts in the largest type.
    public var isResting: Bool { rest != nil }
}

extension ThumbZone {
    /// The small keys, in their order.
    public var small: [Key] { beside.filter { $0.id != Self.uncalled } + [undo, redo, more].compactMap { $0 } }

    /// The keys of the second rank: a set without its effort, a set cut short.
    public var second: [Key] { beside.filter { $0.id == Self.uncalled } + [ended].compactMap { $0 } }

    private static let uncalled = "uncalled"
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
