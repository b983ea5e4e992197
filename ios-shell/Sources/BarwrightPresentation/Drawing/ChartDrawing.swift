import Barwright
import Foundation

/// A chart as the core lays it out: places on two axes become places on a sheet, nothing more.
public struct ChartDrawing: Drawing {
    private let chart: Chart

    public init(_ chart: Chart) {
        self.chart = chart
    }

    public var aloud: String { chart.aloud }

    public func height(type: CGFloat) -> CGFloat { 240 + CGFloat(chart.series.count) * type * Self.line }

    public func marks(on sheet: Sheet) -> [Mark] {
        let palette = sheet.palette
        let type = sheet.type
        let line = type * Self.line
        func width(_ words: String) -> CGFloat { Sheet.width(of: words, size: type) }
        let left = (chart.up.ticks.map { width($0.label) }.max() ?? 0) + 8
        let right = sheet.size.width - 8
        let above = CGFloat(chart.series.count) * line
        let top = above + line * 1.4
        let bottom = sheet.size.height - line * 1.4
        func x(_ at: Int64) -> CGFloat { left + (right - left) * chart.across.share(at) }
        func y(_ at: Int64) -> CGFloat { bottom - (bottom - top) * chart.up.share(at) }
        func words(
            _ words: String, _ hold: Mark.Hold, _ x: CGFloat, _ y: CGFloat, size: CGFloat? = nil
        ) -> Mark {
            .words(words, at: CGPoint(x: x, y: y), hold, size: size ?? type, palette.quiet, turned: false)
        }

        func dot(_ x: CGFloat, _ y: CGFloat) -> Mark {
            .box(
                CGRect(x: x - 4, y: y - 4, width: 8, height: 8), corner: 4, fill: palette.brass,
                edge: palette.ink, width: 1)
        }

        func cross(_ x: CGFloat, _ y: CGFloat) -> [Mark] {
            [4.5, -4.5].map { (arm: CGFloat) in
                .line(
                    [CGPoint(x: x - 4.5, y: y - arm), CGPoint(x: x + 4.5, y: y + arm)],
                    palette.warn, width: 2.5)
            }
        }

        var marks: [Mark] = []
        // What each series is, a line each; in smaller type where the longest would hang over.
        let longest = chart.series.map { width($0.label) }.max() ?? 0
        let fits = longest > 0 ? min(1, (sheet.size.width - 28) / longest) : 1
        for (at, series) in chart.series.enumerated() {
            let y = line * (CGFloat(at) + 0.5)
            let sample = CGRect(x: 0, y: y - 6, width: 22, height: 12)
            switch series.kind {
            case .band: marks.append(.box(sample, corner: 0, fill: palette.band, edge: nil, width: 0))
            case .line:
                marks.append(
                    .line([CGPoint(x: 0, y: y), CGPoint(x: sample.maxX, y: y)], palette.ink, width: 2.5))
            case .marks: marks.append(dot(sample.midX, y))
            case .failed: marks += cross(sample.midX, y)
            }
            marks.append(words(series.label, .left, 28, y, size: type * fits))
        }
        marks.append(words(chart.up.label, .left, 0, above + line / 2))
        var under: CGFloat?
        for tick in chart.up.ticks {
            marks.append(
                .line(
                    [CGPoint(x: left, y: y(tick.at)), CGPoint(x: right, y: y(tick.at))], palette.outline,
                    width: 1))
            // In large type a rung too near to the last number has none.
            if let under, abs(under - y(tick.at)) < type { continue }
            marks.append(words(tick.label, .right, left - 6, y(tick.at)))
            under = y(tick.at)
        }
        var free: CGFloat = 0
        for tick in chart.across.ticks {
            let half = width(tick.label) / 2
            let at = max(half, min(x(tick.at), sheet.size.width - half))
            // A label that would run into the one before it is left out; the chart is also said in words.
            if at - half < free { continue }
            marks.append(words(tick.label, .middle, at, sheet.size.height - line / 2))
            free = at + half + 8
        }
        for series in chart.series {
            let low = series.points.map { CGPoint(x: x($0.x), y: y($0.low)) }
            switch series.kind {
            case .band:
                let high = series.points.map { CGPoint(x: x($0.x), y: y($0.high)) }
                marks.append(.area(high + low.reversed(), palette.band))
            case .line: marks.append(.line(low, palette.ink, width: 2.5))
            case .marks:
                marks += low.map { dot($0.x, $0.y) }
            case .failed: marks += low.flatMap { cross($0.x, $0.y) }
            }
        }
        return sheet.laid(marks)
    }
}

extension ChartDrawing {
    /// A line of words, in type.
    fileprivate static let line: CGFloat = 1.3
}

extension ChartAxis {
    /// How far along the axis, from 0 to 1.
    fileprivate func share(_ at: Int64) -> CGFloat {
        to == from ? 0.5 : CGFloat(at - from) / CGFloat(to - from)
    }
}
