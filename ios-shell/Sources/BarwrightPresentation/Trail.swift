import Barwright
import Foundation

/// Where the lifter is and the way back, kept for a process that ends.
struct Trail: Equatable {
    var look: Look?
    var past: [Look] = []

    init() {}

    init?(_ data: Data) {
        guard let saved = try? JSONDecoder().decode(Saved.self, from: data) else { return nil }
        look = saved.look.flatMap(\.look)
        past = saved.past.compactMap(\.look)
    }

    var data: Data? {
        try? JSONEncoder().encode(Saved(look: look.map(SavedLook.init), past: past.map(SavedLook.init)))
    }
}

private struct Saved: Codable {
    let look: SavedLook?
    let past: [SavedLook]
}

/// A look as plain values.
private struct SavedLook: Codable {
    var name = ""
    var session: String?
    var exercise: String?
    var text: String?
    var number: UInt32?
    var amount: UInt32?
    var load: String?
    var helped: UInt32?
    var correct: String?
    var panel: String?
    var form: String?
    var at: String?
    var how: String?

    init(_ look: Look) {
        switch look {
        case .today(let session, let minutes):
            name = "today"
            self.session = session
            number = minutes
        case .floor(let draft):
            name = "floor"
            amount = draft.amount
            load = draft.load
            helped = draft.helped
            correct = draft.correct
            panel = draft.panel
        case .tally: name = "tally"
        case .weeks: name = "weeks"
        case .anew(let how):
            name = "anew"
            self.how = "\(how)"
        case .lift(let exercise, let page, _):
            name = "lift"
            self.exercise = exercise
            number = page
        case .balance(let weeks):
            name = "balance"
            number = weeks
        case .equipment: name = "equipment"
        case .care: name = "care"
        case .form(let of, let at, let text):
            name = "form"
            form = "\(of)"
            self.at = at
            self.text = text.utf8.count <= Self.mostText ? text : ""
        case .plan(let text, let week):
            name = "plan"
            // Settings are no place for a long file: it has to be opened again.
            self.text = text.flatMap { $0.utf8.count <= Self.mostText ? $0 : nil }
            number = week
        }
    }

    /// The look; nil for a name that another release wrote.
    var look: Look? {
        switch name {
        case "today": .today(session: session, minutes: number)
        case "floor":
            .floor(
                draft: Draft(
                    amount: amount, load: load, helped: helped ?? 0, correct: correct, panel: panel))
        case "tally": .tally
        case "weeks": .weeks
        case "anew": Self.ways.first { "\($0)" == how }.map { .anew(how: $0) }
        case "lift": .lift(exercise: exercise ?? "", page: number ?? 0, all: false)
        case "balance": .balance(weeks: number)
        case "equipment": .equipment
        case "care": .care
        case "form":
            Self.forms.first { "\($0)" == form }.map { .form(of: $0, at: at ?? "", text: text ?? "") }
        case "plan": .plan(text: text, week: number)
        default: nil
        }
    }

    /// What a form may be of; one that is not here is not shown again after the process ended.
    private static let forms: [FormOf] = [
        .start, .gym, .maxes, .exercises, .plan, .session, .liked, .changes, .records,
    ]

    private static let ways: [LayAnew] = [.pushBack, .drop, .squeeze, .squeezeClose]

    private static let mostText = 100_000
}
