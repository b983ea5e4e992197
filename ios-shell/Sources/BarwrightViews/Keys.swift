import BarwrightPresentation
import SwiftUI

/// How a key stands out: the one thing to do now, or everything else.
enum Tone {
    case now
    case plain
}

/// What a key looks like.
struct Face: View {
    let label: String
    var tone = Tone.plain
    var chosen = false
    var font: Font = .body
    var corner = ""
    var height = Room.target
    var inset: CGFloat = 8
    var least: CGFloat?
    @Environment(\.colorScheme) private var scheme
    @Environment(\.isEnabled) private var enabled
    @Environment(\.dynamicTypeSize) private var type

    var body: some View {
        words
            .padding(.horizontal, 8)
            .padding(.vertical, inset)
            .frame(minWidth: least, maxWidth: .infinity, minHeight: height)
            .background(fill, in: RoundedRectangle(cornerRadius: 6))
            .overlay { RoundedRectangle(cornerRadius: 6).stroke(edge, lineWidth: chosen ? 3 : 1) }
            .overlay(alignment: .topTrailing) {
                if !type.isAccessibilitySize { half.padding(6) }
            }
            .contentShape(Rectangle())
    }

    /// In large type what stands in the corner would lie over the words: it stands above them.
    private var words: some View {
        VStack(spacing: 0) {
            if type.isAccessibilitySize, !corner.isEmpty {
                half.frame(maxWidth: .infinity, alignment: .trailing)
            }
            Text(label)
                .font(font.bold().monospacedDigit())
                .multilineTextAlignment(.center)
                .foregroundStyle(ink)
        }
    }

    private var half: some View {
        Text(corner).font(.body.monospacedDigit()).foregroundStyle(ink)
    }

    private var palette: Palette { scheme.palette }

    private var fill: Color {
        switch tone {
        case .now: enabled ? palette.brass.color : palette.ground.color
        case .plain: palette.ground.color
        }
    }

    private var edge: Color {
        switch tone {
        case .now: enabled ? palette.brass.color : palette.outline.color
        case .plain: chosen ? palette.ink.color : palette.outline.color
        }
    }

    /// What is chosen can't be tapped, and is read all the same.
    private var ink: Color {
        switch tone {
        case .now: enabled ? palette.onBrass.color : palette.quiet.color
        case .plain: enabled ? palette.ink.color : chosen ? palette.ink.color : palette.quiet.color
        }
    }
}

/// A key under a finger; one that can't be tapped is told by its face, not dimmed.
struct KeyStyle: ButtonStyle {
    func makeBody(configuration: Configuration) -> some View {
        configuration.label.opacity(configuration.isPressed ? 0.6 : 1)
    }
}

/// A key of the core's: what stands on it, what it says aloud, what it does.
struct KeyView: View {
    let key: Key
    var tone = Tone.plain
    var font: Font = .body
    /// Of the second rank, and less high.
    var second = false
    /// It records nothing, and is one of many.
    var low = false
    /// Beside other words: no narrower than this.
    var least: CGFloat?
    let send: Send

    var body: some View {
        Button {
            send(.act(key.action))
        } label: {
            Face(
                label: key.face, tone: tone, chosen: key.chosen, font: font,
                height: second ? Room.secondTarget : low ? Room.smallTarget : Room.target,
                inset: second ? 3 : 8, least: least)
        }
        .buttonStyle(KeyStyle())
        .disabled(!key.enabled)
        .accessibilityLabel(key.says)
        .accessibilityAddTraits(key.chosen ? .isSelected : [])
    }
}

/// A key of the program's own: a place, a word's answer.
struct OwnKey: View {
    let label: String
    var says = ""
    var chosen = false
    var tone = Tone.plain
    var height = Room.target
    var least: CGFloat?
    let tap: Tap
    let send: Send

    var body: some View {
        Button {
            send(tap)
        } label: {
            Face(
                label: chosen ? "✓ \(label)" : label, tone: tone, chosen: chosen, height: height,
                least: least)
        }
        .buttonStyle(KeyStyle())
        .accessibilityLabel(says.isEmpty ? label : says)
        .accessibilityAddTraits(chosen ? .isSelected : [])
    }
}

extension View {
    /// A key beside other words is as wide as its own want, in any language and however large the text
    /// is: the words beside it are broken into lines, a key's word is not.
    func asWideAsItsWords() -> some View { fixedSize(horizontal: true, vertical: false) }
}

/// A key that records and judges at once; half a repetition more lies behind a long press.
struct EffortView: View {
    let effort: EffortKey
    let send: Send

    var body: some View {
        if let half = effort.half {
            // No Button: it would act when the finger of a long press is lifted too.
            Face(label: effort.key.face, tone: .now, font: .title2, corner: half.label)
                .onTapGesture { send(.act(effort.key.action)) }
                .onLongPressGesture { send(.act(half.action)) }
                .accessibilityElement(children: .ignore)
                .accessibilityLabel(effort.key.says)
                .accessibilityHint(Words.heldFor(half.label))
                .accessibilityAddTraits(.isButton)
                .accessibilityAction { send(.act(effort.key.action)) }
                .accessibilityAction(named: half.says) { send(.act(half.action)) }
        } else {
            KeyView(key: effort.key, tone: .now, font: .title2, send: send)
        }
    }
}

/// Keys side by side, as many in a line as their words have room for.
struct KeyGrid: View {
    let keys: [Key]
    var second = false
    let send: Send
    @ScaledMetric(relativeTo: .body) private var letter: CGFloat = 9.5

    var body: some View {
        if !keys.isEmpty {
            LazyVGrid(
                columns: [GridItem(.adaptive(minimum: keys.narrowest(letter: letter)), spacing: Room.gap)],
                spacing: Room.gap
            ) {
                ForEach(keys, id: \.id) { key in KeyView(key: key, second: second, send: send) }
            }
        }
    }
}
