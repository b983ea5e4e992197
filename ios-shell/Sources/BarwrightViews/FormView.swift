import BarwrightPresentation
import SwiftUI

/// What is made and mended by hand: one view for all of it.
struct FormView: View {
    let form: FormScreen
    let send: Send

    var body: some View {
        SheetView(subtitle: form.subtitle, foot: form.foot, send: send) {
            ForEach(form.rows, id: \.id) { row in FormRowView(row: row, send: send) }
            Lines(lines: form.notes)
            if let chart = form.chart { Picture(drawing: ChartDrawing(chart)) }
        }
    }
}

/// A line of a form: what it is, what it says between its steps, what is wrong with it, and its keys. As
/// on the floor, a tap on what stands between the steps types it.
struct FormRowView: View {
    let row: FormRow
    let send: Send
    @State private var typing = false

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            if row.isStepped {
                words
                Say(words: row.detail, quiet: true)
                HStack(spacing: Room.gap) {
                    if let down = row.down { KeyView(key: down, least: 64, send: send).asWideAsItsWords() }
                    if row.isTyped { typed(row.figure) } else { Say(words: row.value, font: .body.bold()) }
                    if let up = row.up { KeyView(key: up, least: 64, send: send).asWideAsItsWords() }
                }
            } else {
                Beside {
                    words
                } key: {
                    if row.isTyped { typed(Words.type).asWideAsItsWords() }
                }
                Say(words: row.detail, quiet: true)
            }
            Warnings(lines: row.faults)
            Lines(lines: row.remarks, quiet: true)
            if typing, let field = row.field { Fields(fields: [field], send: send) }
            KeyGrid(keys: row.keys, send: send)
        }
        .fixedSize(horizontal: false, vertical: true)
    }

    @ViewBuilder private var words: some View {
        switch row.level {
        case .heading: Say(words: row.words, font: .title2.bold()).accessibilityAddTraits(.isHeader)
        case .exercise, .set: Say(words: row.words)
        }
    }

    /// What can be typed is typed when it is asked for.
    private func typed(_ face: String) -> some View {
        Button {
            typing.toggle()
        } label: {
            Face(label: typing ? Words.close : face, least: 80)
        }
        .buttonStyle(KeyStyle())
        .accessibilityLabel(Words.type(row.text))
    }
}
