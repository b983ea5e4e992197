import BarwrightPresentation
import SwiftUI

/// Points: at least so high is what a thumb hits, and so far apart.
enum Room {
    static let target: CGFloat = 64
    static let smallTarget: CGFloat = 48
    /// Less than half as high as what records a set as it was called.
    static let secondTarget: CGFloat = 30
    static let gap: CGFloat = 12
    static let side: CGFloat = 16
}

extension Tint {
    var color: Color { Color(.sRGB, red: red, green: green, blue: blue, opacity: cover) }
}

extension ColorScheme {
    var isDark: Bool {
        switch self {
        case .dark: true
        case .light: false
        @unknown default: false
        }
    }

    var palette: Palette { .of(dark: isDark) }
}

extension LayoutDirection {
    var isRightToLeft: Bool {
        switch self {
        case .rightToLeft: true
        case .leftToRight: false
        @unknown default: false
        }
    }
}

/// Words of the sheet. Empty words take no room.
struct Say: View {
    let words: String
    var font: Font = .body
    var quiet = false
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        if !words.isEmpty {
            Text(words)
                .font(font.monospacedDigit())
                .foregroundStyle(quiet ? scheme.palette.quiet.color : scheme.palette.ink.color)
                .fixedSize(horizontal: false, vertical: true)
                .frame(maxWidth: .infinity, alignment: .leading)
        }
    }
}

/// Lines under each other.
struct Lines: View {
    let lines: [String]
    var font: Font = .body
    var quiet = false

    var body: some View {
        ForEach(lines.lines) { line in Say(words: line.text, font: font, quiet: quiet) }
    }
}

/// Lines that warn: a stripe of clay beside them, in ordinary type.
struct Warnings: View {
    let lines: [String]
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        if !lines.isEmpty {
            HStack(spacing: 8) {
                Rectangle().fill(scheme.palette.warn.color).frame(width: 4)
                VStack(alignment: .leading, spacing: 4) { Lines(lines: lines, font: .body.bold()) }
            }
            .fixedSize(horizontal: false, vertical: true)
        }
    }
}

/// The largest type of a screen, on one line, as large as its room allows.
struct Large<Figures: View>: View {
    @ViewBuilder let figures: Figures
    @ScaledMetric(relativeTo: .largeTitle) private var size: CGFloat = 80
    @Environment(\.colorScheme) private var scheme

    var body: some View {
        figures
            .font(.system(size: size, weight: .bold).monospacedDigit())
            .lineLimit(1)
            .minimumScaleFactor(0.3)
            .foregroundStyle(scheme.palette.ink.color)
    }
}

/// "Why?", and the derivation when it is asked for.
struct Why: View {
    let label: String
    let steps: [String]

    var body: some View {
        if !steps.isEmpty {
            DisclosureGroup {
                VStack(alignment: .leading, spacing: 4) { Lines(lines: steps, quiet: true) }
            } label: {
                Text(label).font(.body.bold()).frame(minHeight: Room.smallTarget)
            }
        }
    }
}

/// Words or a field with a key beside them; in large type the key stands under them.
struct Beside<What: View, Own: View>: View {
    @ViewBuilder let words: What
    @ViewBuilder let key: Own
    @Environment(\.dynamicTypeSize) private var type

    var body: some View {
        if type.isAccessibilitySize {
            VStack(alignment: .leading, spacing: Room.gap) {
                words
                key
            }
        } else {
            HStack(spacing: Room.gap) {
                words
                key
            }
        }
    }
}
