import BarwrightPresentation
import SwiftUI

/// Everything on the screen: a head, a word that waits for its answer, and the page.
public struct RootView: View {
    let shown: Shown
    let send: Send
    @Environment(\.colorScheme) private var scheme

    public init(shown: Shown, send: @escaping Send) {
        self.shown = shown
        self.send = send
    }

    public var body: some View {
        VStack(spacing: 0) {
            if let page = shown.page { HeadView(title: page.title, back: shown.back, send: send) }
            if let word = shown.word { WordView(word: word, send: send) }
            if let page = shown.page { PageView(page: page, send: send) }
        }
        .frame(maxWidth: .infinity, maxHeight: .infinity, alignment: .top)
        .background(scheme.palette.ground.color.ignoresSafeArea())
        .tint(scheme.palette.ink.color)
    }
}

/// The title, the way back, and where else to go.
struct HeadView: View {
    let title: String
    let back: Bool
    let send: Send
    @Environment(\.dynamicTypeSize) private var type

    var body: some View {
        VStack(spacing: 4) {
            // Between keys in large type there is no room for a title.
            if type.isAccessibilitySize {
                keys(besideKeys: false)
                words
            } else {
                keys(besideKeys: true)
            }
        }
        .padding(.horizontal, Room.side)
        .padding(.vertical, 4)
    }

    private func keys(besideKeys: Bool) -> some View {
        HStack(spacing: Room.gap) {
            if back {
                OwnKey(label: Words.back, height: Room.smallTarget, least: 88, tap: .back, send: send)
                    .asWideAsItsWords()
            }
            if besideKeys { words } else { Spacer() }
            OwnKey(label: Words.places, height: Room.smallTarget, least: 96, tap: .places, send: send)
                .asWideAsItsWords()
        }
    }

    private var words: some View {
        Say(words: title, font: .body.bold()).accessibilityAddTraits(.isHeader)
    }
}

/// A word over the page: a refusal, or what the device does not allow.
struct WordView: View {
    let word: Word
    let send: Send

    var body: some View {
        VStack(spacing: Room.gap) {
            Warnings(lines: [word.text])
            HStack(spacing: Room.gap) {
                if let yes = word.yes { OwnKey(label: yes, tap: .meant, send: send) }
                OwnKey(label: word.no, tap: .understood, send: send)
            }
        }
        .padding(.horizontal, Room.side)
        .padding(.vertical, 8)
    }
}

/// The page that is on.
struct PageView: View {
    let page: Page
    let send: Send

    var body: some View {
        switch page {
        case .today(let today): TodayView(today: today, send: send)
        case .floor(let floor): FloorView(page: floor, send: send)
        case .tally(let tally): TallyView(tally: tally, send: send)
        case .weeks(let weeks): WeeksView(weeks: weeks, send: send)
        case .lift(let lift): LiftView(lift: lift, send: send)
        case .balance(let balance): BalanceView(balance: balance, send: send)
        case .equipment(let equipment): EquipmentView(equipment: equipment, send: send)
        case .care(let care): CareView(care: care, send: send)
        case .plan(let plan): PlanView(plan: plan, send: send)
        case .form(let form): FormView(form: form, send: send)
        case .notShown(let notShown): NotShownView(notShown: notShown, send: send)
        case .places(let places): PlacesView(places: places, send: send)
        }
    }
}

/// Where to go, and the device's own matters.
struct PlacesView: View {
    let places: PlacesPage
    let send: Send
    @ScaledMetric(relativeTo: .body) private var narrowest: CGFloat = 140

    var body: some View {
        ScrollView {
            VStack(alignment: .leading, spacing: Room.gap) {
                LazyVGrid(
                    columns: [GridItem(.adaptive(minimum: narrowest), spacing: Room.gap)],
                    spacing: Room.gap
                ) {
                    ForEach(places.places) { place in
                        OwnKey(label: place.label, tap: place.tap, send: send)
                    }
                }
                Say(words: Words.onThisPhone, font: .title2.bold()).accessibilityAddTraits(.isHeader)
                OwnKey(
                    label: Words.speak, chosen: places.speaks, tap: .speaks(!places.speaks), send: send)
            }
            .padding(.horizontal, Room.side)
            .padding(.bottom, Room.side)
        }
    }
}
