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
        case .words(let words, let middle, let size, let tint, let turned):
            let text = Text(words).font(.system(size: size, weight: .bold).monospacedDigit())
                .foregroundStyle(tint.color)
            var there = context
            there.translateBy(x: middle.x, y: middle.y)
            if turned { there.rotate(by: .degrees(-90)) }
            there.draw(text, at: .zero)
        }
    }

    private func line(_ points: [CGPoint]) -> Path {
        Path { path in path.addLines(points) }
    }
}
