import BarwrightPresentation
import SwiftUI

/// A sheet: one column that scrolls, its keys under it within reach, or beside it on a screen that
/// lies on its side.
struct SheetView<Content: View>: View {
    let subtitle: String
    let foot: Foot
    let send: Send
    @ViewBuilder let content: Content
    @Environment(\.verticalSizeClass) private var tall

    var body: some View {
        switch tall {
        case .compact:
            HStack(alignment: .bottom, spacing: 0) {
                sheet
                keys
            }
        default:
            VStack(spacing: 0) {
                sheet.frame(minHeight: 160)
                keys.layoutPriority(1)
            }
        }
    }

    private var sheet: some View {
        ScrollView {
            VStack(alignment: .leading, spacing: Room.gap) {
                Say(words: subtitle, quiet: true)
                content
                KeyGrid(keys: foot.many, send: send)
                if !foot.handsOn { handing }
            }
            .padding(.horizontal, Room.side)
            .padding(.bottom, Room.side)
        }
    }

    @ViewBuilder private var keys: some View {
        if !foot.isEmpty {
            ViewThatFits(in: .vertical) {
                hand
                ScrollView { hand }
            }
        }
    }

    private var hand: some View {
        VStack(spacing: Room.gap) {
            if let now = foot.now { KeyView(key: now, tone: .now, font: .title2, send: send) }
            if let file = foot.file { OwnKey(label: file.label, tap: file.tap, send: send) }
            if foot.handsOn { handing }
            KeyGrid(keys: foot.few, send: send)
        }
        .padding(.horizontal, Room.side)
        .padding(.vertical, 8)
    }

    @ViewBuilder private var handing: some View {
        if let onward = foot.onward { OwnKey(label: onward.label, tap: onward.tap, send: send) }
    }
}

/// A line of a sheet, with its reason and its keys.
struct RowView: View {
    let row: Row
    let send: Send
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        HStack(spacing: 8) {
            if row.warns { Rectangle().fill(scheme.palette.warn.color).frame(width: 4) }
            VStack(alignment: .leading, spacing: 4) {
                Beside {
                    words
                } key: {
                    if let key = row.single {
                        KeyView(key: key, least: 120, send: send).asWideAsItsWords()
                    }
                }
                Say(words: row.detail, quiet: true)
                Why(label: Words.why, steps: row.why)
                KeyGrid(keys: row.several, send: send)
            }
        }
        .fixedSize(horizontal: false, vertical: true)
    }

    @ViewBuilder private var words: some View {
        switch row.level {
        case .heading: Say(words: row.marked, font: .title2.bold()).accessibilityAddTraits(.isHeader)
        case .exercise: Say(words: row.marked, font: .body.bold())
        case .set: Say(words: row.marked).padding(.leading, Room.side)
        }
    }
}

/// Rows under each other.
struct Rows: View {
    let rows: [Row]
    let send: Send

    var body: some View {
        ForEach(rows, id: \.id) { row in RowView(row: row, send: send) }
    }
}

/// Something to write, and the key that hands it over.
struct FieldView: View {
    let field: Field
    let send: Send
    @State private var text: String

    init(field: Field, send: @escaping Send) {
        self.field = field
        self.send = send
        _text = State(initialValue: field.value)
    }

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            Say(words: field.label, font: .body.bold())
            Beside {
                TextField(field.hint, text: $text)
                    .font(.body.monospacedDigit())
                    .textFieldStyle(.roundedBorder)
                    .autocorrectionDisabled(field.numeric)
                    .textInputAutocapitalization(field.numeric ? .never : .sentences)
                    .submitLabel(.done)
                    .onSubmit { hand() }
                    .frame(minHeight: Room.target)
                    .accessibilityLabel(field.label)
            } key: {
                Button {
                    hand()
                } label: {
                    Face(label: Words.keep, least: 96)
                }
                .buttonStyle(KeyStyle())
                .asWideAsItsWords()
                .accessibilityLabel(Words.keep(field.label))
            }
        }
    }

    private func hand() { send(.write(field: field.id, text: text)) }
}

/// Fields under each other. What is being written stays until what stands in the field changes.
struct Fields: View {
    let fields: [Field]
    let send: Send

    var body: some View {
        ForEach(fields, id: \.id) { field in
            FieldView(field: field, send: send).id("\(field.id) \(field.value)")
        }
    }
}

/// Today's sheet.
struct TodayView: View {
    let today: TodayScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: today.subtitle, foot: today.foot, send: send) {
            Say(words: today.duration, font: .body.bold())
            Warnings(lines: today.cautions)
            Fields(fields: today.needs, send: send)
            Rows(rows: today.rows, send: send)
            Lines(lines: today.leftOut, quiet: true)
        }
    }
}

/// The end of a session.
struct TallyView: View {
    let tally: TallyScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: tally.subtitle, foot: tally.foot, send: send) {
            Rows(rows: tally.done, send: send)
            Rows(rows: tally.changes, send: send)
            Lines(lines: tally.notes)
            Warnings(lines: tally.cautions)
            Fields(fields: tally.fields, send: send)
        }
    }
}

/// The plan as weeks.
struct WeeksView: View {
    let weeks: WeeksScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: weeks.subtitle, foot: weeks.foot, send: send) {
            ForEach(weeks.weeks, id: \.title) { week in
                Say(words: week.marked, font: .title2.bold()).accessibilityAddTraits(.isHeader)
                Rows(rows: week.rows, send: send)
            }
        }
    }
}

/// One exercise over time: the drawing first.
struct LiftView: View {
    let lift: LiftScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: lift.subtitle, foot: lift.foot, send: send) {
            if let chart = lift.chart { Picture(drawing: ChartDrawing(chart)) }
            Rows(rows: lift.records, send: send)
            Fields(fields: lift.fields, send: send)
            Rows(rows: lift.sessions, send: send)
        }
    }
}

/// Each muscle and side, planned and done.
struct BalanceView: View {
    let balance: BalanceScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: balance.subtitle, foot: balance.foot, send: send) {
            ForEach(balance.pictures) { picture in
                VStack(alignment: .leading, spacing: 2) {
                    Say(words: picture.bar.text, font: picture.bar.behind ? .body.bold() : .body)
                    Picture(drawing: picture.drawing)
                    Say(words: picture.bar.detail, quiet: true)
                }
            }
            Rows(rows: balance.sentences, send: send)
            Kinds(rows: balance.kinds, send: send)
        }
    }
}

/// A week of each kind on average, under its heading.
struct Kinds: View {
    let rows: [Row]
    let send: Send

    var body: some View {
        if !rows.isEmpty {
            Say(words: Words.byKind, font: .title2.bold()).accessibilityAddTraits(.isHeader)
            Rows(rows: rows, send: send)
        }
    }
}

/// What this gym has.
struct EquipmentView: View {
    let equipment: EquipmentScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: equipment.subtitle, foot: equipment.foot, send: send) {
            KeyGrid(keys: equipment.gyms, send: send)
            Rows(rows: equipment.rows, send: send)
        }
    }
}

/// The general cautions, and the switch for minors.
struct CareView: View {
    let care: CareScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: care.subtitle, foot: care.foot, send: send) {
            Rows(rows: care.rows, send: send)
        }
    }
}

/// What stands where a screen could not be made after a tap that is recorded.
struct NotShownView: View {
    let notShown: NotShownScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: "", foot: notShown.foot, send: send) {
            Warnings(lines: notShown.lines)
        }
    }
}

/// A plan, or what is wrong with a file and where.
struct PlanView: View {
    let plan: PlanScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: plan.subtitle, foot: plan.foot, send: send) {
            ForEach(plan.placedFaults) { placed in FaultView(fault: placed.fault) }
            Rows(rows: plan.rows, send: send)
        }
    }
}

/// A fault in its place: the line as it is written, underlined, and what to write instead.
struct FaultView: View {
    let fault: FileFault
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        VStack(alignment: .leading, spacing: 2) {
            Say(words: Words.faultPlace(fault), quiet: true)
            // A file's lines are not broken: the underline must stay under its place.
            ScrollView(.horizontal) {
                VStack(alignment: .leading, spacing: 0) {
                    Text(fault.text)
                    Text(fault.underline)
                        .foregroundStyle(
                            fault.advises ? scheme.palette.quiet.color : scheme.palette.warn.color)
                        .accessibilityHidden(true)
                }
                .font(.body.monospaced())
                .environment(\.layoutDirection, .leftToRight)
            }
            // What only advises is said more quietly; its label says which it is.
            Say(words: fault.problem, font: fault.advises ? .body : .body.bold())
            Say(words: fault.advice)
        }
    }
}
