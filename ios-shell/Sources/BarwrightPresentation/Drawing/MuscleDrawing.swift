import Barwright
import Foundation

/// One muscle: planned as an outline, done as a fill, of which sets under six repetitions are
/// hatched; left and right apart where a side matters.
/// The words over it say the same.
public struct MuscleDrawing: Drawing {
    private let bar: MuscleBar
    private let full: UInt32

    /// `full` fills the width.
    public init(_ bar: MuscleBar, full: UInt32) {
        self.bar = bar
        self.full = full
    }

    public var aloud: String { "" }

    public func height(type: CGFloat) -> CGFloat { 22 }

    public func marks(on sheet: Sheet) -> [Mark] {
        let palette = sheet.palette
        let height = sheet.size.height
        let tint = bar.behind ? palette.warn : palette.quiet
        func long(_ halves: UInt32) -> CGFloat {
            full == 0 ? 0 : sheet.size.width * min(CGFloat(halves) / CGFloat(full), 1)
        }
        func done(_ halves: UInt32, from: CGFloat, to: CGFloat) -> Mark {
            .box(
                CGRect(x: 0, y: from, width: long(halves), height: to - from), corner: 0, fill: tint,
                edge: nil, width: 0)
        }
        var marks: [Mark]
        if let left = bar.leftHalves, let right = bar.rightHalves {
            marks = [
                done(left, from: 1, to: height / 2 - 1), done(right, from: height / 2 + 1, to: height - 1),
            ]
        } else {
            marks = [done(bar.doneHalves, from: 1, to: height - 1)]
            marks += hatch(
                from: long(bar.doneHalves) - long(bar.underSixHalves), to: long(bar.doneHalves), sheet)
        }
        if bar.plannedHalves > 0 {
            marks.append(
                .box(
                    CGRect(x: 1, y: 1, width: max(long(bar.plannedHalves) - 2, 1), height: height - 2),
                    corner: 0, fill: nil, edge: palette.ink, width: 2))
        }
        return sheet.laid(marks)
    }

    /// Slanted lines across the fill, four points apart.
    private func hatch(from: CGFloat, to: CGFloat, _ sheet: Sheet) -> [Mark] {
        let height = sheet.size.height
        return stride(from: max(from, 0), to: to, by: 4).map { x in
            .line(
                [CGPoint(x: x, y: height - 1), CGPoint(x: min(x + 4, to), y: 1)], sheet.palette.ground,
                width: 1.5)
        }
    }
}

/// A muscle's bar with its words.
public struct MusclePicture: Sendable, Equatable, Identifiable {
    public let bar: MuscleBar
    public let drawing: MuscleDrawing

    public var id: String { bar.muscle }
}

extension BalanceScreen {
    /// Its bars, ready to draw.
    public var pictures: [MusclePicture] {
        bars.map { MusclePicture(bar: $0, drawing: MuscleDrawing($0, full: fullHalves)) }
    }
}
