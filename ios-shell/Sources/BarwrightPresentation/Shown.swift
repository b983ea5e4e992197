import Barwright

/// All that is on the screen, as one value.
public struct Shown: Sendable, Equatable {
    /// The page; none before the first answer.
    public internal(set) var page: Page?
    /// A word over the page that waits for its answer.
    public internal(set) var word: Word?
    /// There is a way back.
    public internal(set) var back = false

    init() {}
}

/// A page: a screen of the core, or the places.
public enum Page: Sendable, Equatable {
    case today(TodayScreen)
    case floor(FloorPage)
    case tally(TallyScreen)
    case weeks(WeeksScreen)
    case lift(LiftScreen)
    case balance(BalanceScreen)
    case equipment(EquipmentScreen)
    case care(CareScreen)
    case plan(PlanScreen)
    case form(FormScreen)
    case notShown(NotShownScreen)
    case places(PlacesPage)

    /// What stands over it.
    public var title: String {
        switch self {
        case .today(let today): today.title
        case .floor(let page): page.floor.title
        case .tally(let tally): tally.title
        case .weeks(let weeks): weeks.title
        case .lift(let lift): lift.title
        case .balance(let balance): balance.title
        case .equipment(let equipment): equipment.title
        case .care(let care): care.title
        case .plan(let plan): plan.title
        case .form(let form): form.title
        case .notShown(let notShown): notShown.title
        case .places: Words.placesTitle
        }
    }
}

/// The floor, and the countdown of its rest for the system to draw.
public struct FloorPage: Sendable, Equatable {
    public let floor: FloorScreen
    public let countdown: Countdown?
}

/// Where to go, and the device's own matters.
public struct PlacesPage: Sendable, Equatable {
    /// Words are spoken.
    public let speaks: Bool
    /// The places, each with what opens it.
    public let places: [Place]

    init(speaks: Bool) {
        self.speaks = speaks
        places = [
            Place(label: Words.today, tap: .go(.today(session: nil, minutes: nil))),
            Place(label: Words.floor, tap: .go(.floor(draft: Draft()))),
            Place(label: Words.weeks, tap: .go(.weeks)),
            Place(label: Words.tally, tap: .go(.tally)),
            Place(label: Words.lift, tap: .go(.lift(exercise: "", page: 0, all: false))),
            Place(label: Words.balance, tap: .go(.balance(weeks: nil))),
            Place(label: Words.equipment, tap: .go(.equipment)),
            Place(label: Words.plan, tap: .go(.plan(text: nil, week: nil))),
            Place(label: Words.care, tap: .go(.care)),
            Place(label: Words.readAloud, tap: .readAloud),
            .openPlan,
            .openGym,
            Place(label: Words.copy, tap: .copy),
        ]
    }
}

/// A place to go to.
public struct Place: Sendable, Equatable, Identifiable {
    public let label: String
    public let tap: Tap

    public var id: String { label }
}

/// A word over the page: a refusal, or what the device does not allow. It stays until it is answered.
public struct Word: Sendable, Equatable {
    /// The words.
    public let text: String
    /// What stands on the key that means it all the same; none where there is nothing to mean.
    public let yes: String?
    /// What stands on the key that puts the word away.
    public let no: String
    /// What is done when it is meant.
    let meant: Meant?

    init(_ text: String) {
        self.text = text
        yes = nil
        no = Words.understood
        meant = nil
    }

    init(asking text: String, meant: Action) {
        self.text = text
        yes = Words.anyway
        no = Words.leaveIt
        self.meant = .act(meant)
    }

    /// The records can't be opened: what is good in them can be read into new ones.
    init(recovering text: String) {
        self.text = text
        yes = Words.recover
        no = Words.leaveIt
        meant = .recover
    }
}

/// What a word asks about.
enum Meant: Sendable, Equatable {
    case act(Action)
    case recover
}
