import Foundation

/// One mark of a drawing: where it goes is worked out here and tested; a view only paints it.
public enum Mark: Sendable, Equatable {
    /// A filled rectangle with round corners, and an edge where one is given.
    case box(CGRect, corner: CGFloat, fill: Tint?, edge: Tint?, width: CGFloat)
    /// A line through points.
    case line([CGPoint], Tint, width: CGFloat)
    /// A filled area within points.
    case area([CGPoint], Tint)
    /// Words at a place that is their beginning, middle or end, half their height under it; upright
    /// and bold along a plate when turned.
    case words(String, at: CGPoint, Hold, size: CGFloat, Tint, turned: Bool)

    /// Where words are held.
    public enum Hold: Sendable {
        case left
        case middle
        case right
    }

    /// Seen in a mirror of a sheet so wide: where a script runs from right to left.
    func mirrored(in width: CGFloat) -> Mark {
        func mirror(_ point: CGPoint) -> CGPoint { CGPoint(x: width - point.x, y: point.y) }
        return switch self {
        case .box(let box, let corner, let fill, let edge, let line):
            .box(
                CGRect(x: width - box.maxX, y: box.minY, width: box.width, height: box.height),
                corner: corner, fill: fill, edge: edge, width: line)
        case .line(let points, let tint, let line): .line(points.map(mirror), tint, width: line)
        case .area(let points, let tint): .area(points.map(mirror), tint)
        case .words(let words, let place, let hold, let size, let tint, let turned):
            .words(words, at: mirror(place), hold.mirrored, size: size, tint, turned: turned)
        }
    }
}

extension Mark.Hold {
    fileprivate var mirrored: Mark.Hold {
        switch self {
        case .left: .right
        case .middle: .middle
        case .right: .left
        }
    }
}

/// How a sheet for a drawing is.
public struct Sheet: Sendable, Equatable {
    let size: CGSize
    let palette: Palette
    let rightToLeft: Bool
    /// Points of ordinary type, as the lifter has set it.
    let type: CGFloat

    public init(size: CGSize, dark: Bool, rightToLeft: Bool, type: CGFloat) {
        self.size = size
        palette = .of(dark: dark)
        self.rightToLeft = rightToLeft
        self.type = type
    }

    func laid(_ marks: [Mark]) -> [Mark] {
        rightToLeft ? marks.map { $0.mirrored(in: size.width) } : marks
    }

    /// About how wide words are: figures are of one width, and letters seldom wider.
    static func width(of words: String, size: CGFloat) -> CGFloat {
        CGFloat(words.count) * size * 0.6
    }
}

/// Something to draw.
public protocol Drawing: Sendable, Equatable {
    /// Its marks, those behind first.
    func marks(on sheet: Sheet) -> [Mark]
    /// What it shows, to be read aloud; empty where words beside it say it all.
    var aloud: String { get }
    /// Its height in points, where ordinary type is so large.
    func height(type: CGFloat) -> CGFloat
}
