import BarwrightPresentation
import SwiftUI

/// The floor: the bar, the call, the thumb. The thumb zone stays at the bottom, the two others above
/// it; where the screen lies on its side they stand beside each other.
struct FloorView: View {
    let page: FloorPage
    let send: Send
    @Environment(\.verticalSizeClass) private var tall
    @Environment(\.accessibilityReduceMotion) private var still

    var body: some View {
        switch tall {
        case .compact:
            HStack(alignment: .bottom, spacing: 0) {
                upper
                lower
            }
        default:
            VStack(spacing: 0) {
                upper.frame(minHeight: 160)
                lower.layoutPriority(1)
            }
        }
    }

    private var floor: FloorScreen { page.floor }

    private var upper: some View {
        ScrollView {
            VStack(alignment: .leading, spacing: 8) {
                // What goes on the bar stands over everything but the countdown: on the smallest
                // screen and in the largest type it is what is left above the thumb.
                if let rest = floor.rest, let countdown = page.countdown {
                    RestZone(rest: rest, countdown: countdown, send: send)
                }
                BarZoneView(zone: floor.bar, resting: floor.isResting, send: send)
                Warnings(lines: floor.notices)
                CallZoneView(zone: floor.call)
            }
            .padding(.horizontal, Room.side)
            .padding(.bottom, 8)
        }
        // Another set begins at its top; it moves in only where motion is wanted.
        .id(floor.part)
        .transition(.opacity)
        .animation(still ? nil : .easeOut(duration: 0.2), value: floor.part)
    }

    private var lower: some View {
        ViewThatFits(in: .vertical) {
            hand
            ScrollView { hand }
        }
    }

    private var hand: some View {
        VStack(spacing: Room.gap) {
            if let panel = floor.panel {
                PanelView(panel: panel, send: send)
            } else {
                ThumbZoneView(zone: floor.thumb, send: send)
            }
        }
        .padding(.horizontal, Room.side)
        .padding(.vertical, 8)
    }
}

/// The countdown takes the large type; shorter and longer stand together after it.
struct RestZone: View {
    let rest: RunningRest
    let countdown: Countdown
    let send: Send

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            Say(words: rest.label, font: .body.bold(), quiet: true)
            Beside {
                Large {
                    HStack(spacing: 0) {
                        Text(countdown.sign)
                        // The system counts; nothing of ours runs.
                        Text(timerInterval: countdown.interval, countsDown: countdown.down)
                    }
                }
                .frame(maxWidth: .infinity)
                .accessibilityElement(children: .combine)
                .accessibilityLabel(rest.label)
            } key: {
                HStack(spacing: Room.gap) {
                    KeyView(key: rest.shorter, least: 64, send: send).asWideAsItsWords()
                    KeyView(key: rest.longer, least: 64, send: send).asWideAsItsWords()
                }
            }
        }
    }
}

/// Zone one. The largest type is the load's, unless a rest counts in it.
struct BarZoneView: View {
    let zone: BarZone
    let resting: Bool
    let send: Send
    @Environment(\.dynamicTypeSize) private var type

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            if resting {
                Say(words: zone.total, font: .title2.bold())
            } else if !zone.total.isEmpty {
                Large { Text(zone.total) }
            }
            Say(words: zone.line, font: .title2)
            Say(words: zone.change, font: .title2)
            if zone.hasMore {
                // In large type the words stand under the drawing, where they have room.
                if type.isAccessibilitySize {
                    picture
                    about
                } else {
                    HStack(spacing: Room.gap) {
                        picture
                        about.frame(width: 116)
                    }
                }
            }
        }
    }

    @ViewBuilder private var picture: some View {
        if zone.drawn { Picture(drawing: BarDrawing(zone)) }
    }

    private var about: some View {
        VStack(alignment: .leading, spacing: 4) {
            Say(words: zone.counts, font: .body.bold(), quiet: true)
            Say(words: zone.name, quiet: true)
            if let holds = zone.holds { KeyView(key: holds, send: send) }
        }
    }
}

/// Zone two.
struct CallZoneView: View {
    let zone: CallZone

    var body: some View {
        VStack(alignment: .leading, spacing: 4) {
            Say(words: zone.exercise, font: .body.bold())
            Say(words: zone.sentence, font: .title2.bold())
            Say(words: zone.last, quiet: true)
            Warnings(lines: zone.cautions)
            Lines(lines: zone.manner)
            Lines(lines: zone.setUp)
            Lines(lines: zone.cues)
            Say(words: zone.toGo, quiet: true)
            Why(label: Words.whyThisLoad, steps: zone.why)
        }
    }
}

/// Zone three: everything that records.
struct ThumbZoneView: View {
    let zone: ThumbZone
    let send: Send

    var body: some View {
        if let figure = zone.figure { FigureView(figure: figure, send: send) }
        Say(words: zone.prompt, font: .body.bold())
        if zone.effort.isEmpty {
            if let main = zone.main { KeyView(key: main, tone: .now, font: .title2, send: send) }
        } else {
            LazyVGrid(columns: Thirds.columns, spacing: Room.gap) {
                ForEach(zone.effort, id: \.key.id) { effort in EffortView(effort: effort, send: send) }
            }
            // Beside effort keys a main key is the second choice: putting a set right as it was.
            if let main = zone.main { KeyView(key: main, font: .title2, send: send) }
        }
        KeyGrid(keys: zone.second, second: true, send: send)
        KeyGrid(keys: zone.small, send: send)
    }
}

/// Three keys a line, as on any pad.
enum Thirds {
    static let columns = [
        GridItem(.flexible(), spacing: Room.gap), GridItem(.flexible(), spacing: Room.gap),
        GridItem(.flexible(), spacing: Room.gap),
    ]
}

/// What was done, a step down and up beside it.
struct FigureView: View {
    let figure: Figure
    let send: Send
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        HStack(spacing: Room.gap) {
            KeyView(key: figure.down, font: .title2, send: send)
            // What is far from the call is typed.
            Button {
                send(.act(figure.pad.action))
            } label: {
                words
                    .frame(maxWidth: .infinity, minHeight: Room.target)
                    .overlay {
                        RoundedRectangle(cornerRadius: 6).stroke(scheme.palette.outline.color, lineWidth: 1)
                    }
                    .contentShape(Rectangle())
            }
            .buttonStyle(KeyStyle())
            .disabled(!figure.pad.enabled)
            .accessibilityLabel(figure.words)
            .accessibilityHint(figure.pad.says)
            KeyView(key: figure.up, font: .title2, send: send)
        }
    }

    @ViewBuilder private var words: some View {
        if figure.runs {
            Large { Text(figure.words) }
        } else {
            Text(figure.words)
                .font(.title2.bold().monospacedDigit())
                .foregroundStyle(scheme.palette.ink.color)
        }
    }
}

/// What is seldom needed, open over the thumb zone.
struct PanelView: View {
    let panel: Panel
    let send: Send

    var body: some View {
        Say(words: panel.title, font: .title2.bold()).accessibilityAddTraits(.isHeader)
        Rows(rows: panel.rows, send: send)
        if panel.isPad {
            LazyVGrid(columns: Thirds.columns, spacing: Room.gap) {
                ForEach(panel.keys, id: \.id) { key in
                    KeyView(key: key, font: .title2, low: true, send: send)
                }
            }
        } else {
            KeyGrid(keys: panel.keys, send: send)
        }
        Fields(fields: panel.fields, send: send)
        KeyView(key: panel.close, send: send)
    }
}
