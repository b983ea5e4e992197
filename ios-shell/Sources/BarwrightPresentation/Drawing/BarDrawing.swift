import Barwright
import Foundation

/// The loaded sleeve to scale, side on: shaft, inner collar, plates with their numbers, the lock,
/// the sleeve's end. One scale holds along the sleeve and one across it; the sleeve is drawn longer
/// than it is, so that a thin plate has room for its number.
public struct BarDrawing: Drawing {
    private let zone: BarZone

    public init(_ zone: BarZone) {
        self.zone = zone
    }

    public var aloud: String {
        ([zone.bar] + zone.plates.map(\.label) + [zone.counts]).filter { !$0.isEmpty }
            .joined(separator: ", ")
    }

    /// Lower where nothing is to be changed.
    public func height(type: CGFloat) -> CGFloat { zone.change.isEmpty ? 72 : 120 }

    public func marks(on sheet: Sheet) -> [Mark] {
        let palette = sheet.palette
        let width = sheet.size.width
        let across = sheet.size.height
        let middle = across / 2
        func steel(from: CGFloat, to: CGFloat, share: CGFloat, corner: CGFloat) -> Mark {
            .box(
                CGRect(x: from, y: middle - across * share, width: to - from, height: across * share * 2),
                corner: corner, fill: palette.steel, edge: nil, width: 0)
        }
        let shaft = width * 0.1
        let begin = shaft + 10
        // 415 mm of sleeve to 450 mm of plate, and so much longer than it is.
        let sleeve = max(0, min(width - 8 - begin, across * 415 / 450 * 2.6))
        var marks = [
            steel(from: 0, to: begin, share: 0.035, corner: 0),
            steel(from: shaft, to: begin, share: 0.11, corner: 2),
            steel(from: begin, to: begin + sleeve, share: 0.055, corner: 3),
        ]
        var x = begin
        for plate in zone.plates {
            let wide = max(sleeve * CGFloat(plate.width) / 1000, 14)
            let tall = across * CGFloat(plate.height) / 1000
            let box = CGRect(x: x, y: middle - tall / 2, width: wide, height: tall)
            marks.append(
                .box(
                    box.insetBy(dx: 0.5, dy: 0.5), corner: 3, fill: Tint(plate.colour) ?? palette.plate,
                    edge: palette.plateEdge, width: 1))
            // The number stands upright along the plate's edge, as large as it has room for.
            let most = min(wide * 0.8, 16)
            let long = Sheet.width(of: plate.label, size: most)
            let room = max(tall - 4, 1)
            marks.append(
                .words(
                    plate.label, at: CGPoint(x: box.midX, y: box.midY), .middle,
                    size: long > room ? most * room / long : most,
                    Tint(plate.ink) ?? palette.onBrass, turned: true))
            x += wide
        }
        if zone.collar {
            marks.append(
                .box(
                    CGRect(x: x + 1, y: middle - across * 0.13, width: 8, height: across * 0.26),
                    corner: 2, fill: palette.steel, edge: palette.plateEdge, width: 1))
        }
        return sheet.laid(marks)
    }
}
