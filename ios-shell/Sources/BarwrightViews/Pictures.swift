import BarwrightPresentation
import SwiftUI

/// Paints a drawing; what it shows is said in words too.
struct Picture<Shows: Drawing>: View {
    let drawing: Shows
    @Environment(\.colorScheme) private var scheme
    @Environment(\.layoutDirection) private var direction
    @ScaledMetric(relativeTo: .body) private var type: CGFloat = 15

    var body: some View {
        Canvas { context, size in
            let sheet = Sheet(
                size: size, dark: scheme.isDark, rightToLeft: direction.isRightToLeft, type: type)
            for mark in drawing.marks(on: sheet) { paint(mark, on: context) }
        }
        .frame(maxWidth: .infinity)
        .frame(height: drawing.height(type: type))
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(drawing.aloud)
        .accessibilityHidden(drawing.aloud.isEmpty)
    }

    private func paint(_ mark: Mark, on context: GraphicsContext) {
        switch mark {
        case .box(let box, let corner, let fill, let edge, let width):
            let path = Path(roundedRect: box, cornerRadius: corner)
            if let fill { context.fill(path, with: .color(fill.color)) }
            if let edge { context.stroke(path, with: .color(edge.color), lineWidth: width) }
        case .line(let points, let tint, let width):
            context.stroke(line(points), with: .color(tint.color), lineWidth: width)
        case .area(let points, let tint):
            context.fill(line(points), with: .color(tint.color))
        case .words(let words, let place, let hold, let size, let tint, let turned):
            let font = Font.system(size: size, weight: turned ? .bold : .regular).monospacedDigit()
            var there = context
            there.translateBy(x: place.x, y: place.y)
            if turned { there.rotate(by: .degrees(-90)) }
            there.draw(Text(words).font(font).foregroundStyle(tint.color), at: .zero, anchor: hold.anchor)
        }
    }

    private func line(_ points: [CGPoint]) -> Path {
        Path { path in path.addLines(points) }
    }
}

extension Mark.Hold {
    fileprivate var anchor: UnitPoint {
        switch self {
        case .left: .leading
        case .middle: .center
        case .right: .trailing
        }
    }
}
