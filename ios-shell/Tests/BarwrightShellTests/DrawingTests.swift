import Barwright
import Foundation
import XCTest

@testable import BarwrightPresentation

/// Where marks go, with the core's own drawings. Pictures to look at go to `.build/pictures`.
@MainActor final class DrawingTests: PhoneTests, @unchecked Sendable {
    private func sheet(
        _ width: CGFloat, _ height: CGFloat, dark: Bool = true, rightToLeft: Bool = false, type: CGFloat = 15
    ) -> Sheet {
        Sheet(size: CGSize(width: width, height: height), dark: dark, rightToLeft: rightToLeft, type: type)
    }

    private func keep(_ name: String, _ sheet: Sheet, _ marks: [Mark]) throws {
        let folder = checkout.appendingPathComponent("ios-shell/.build/pictures")
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        try svg(sheet, marks).write(
            to: folder.appendingPathComponent("\(name).svg"), atomically: true, encoding: .utf8)
    }

    /// A bar with plates, on the way up to the squat's work sets.
    private func bar() async throws -> BarZone {
        let phone = try handset()
        try phone.demoStore()
        await phone.start()
        try await phone.tap("Begin")
        await phone.dispatch(.takeUp(entry: 1))
        for _ in 0..<5 {
            await phone.dispatch(
                .record(part: nil, amount: nil, leftHalves: nil, ended: .asCalled, helped: 0, last: false))
        }
        let zone = try await phone.floor().bar
        XCTAssertEqual(zone.total, "115 kg")
        return zone
    }

    private func boxes(_ marks: [Mark]) -> [CGRect] {
        marks.compactMap { if case .box(let box, _, _, _, _) = $0 { box } else { nil } }
    }

    func testTheBarIsToScaleAndStaysOnItsSheet() async throws {
        let zone = try await bar()
        XCTAssertGreaterThan(zone.plates.count, 1)
        for width in [200, 240, 300, 600] as [CGFloat] {
            let sheet = sheet(width, 120)
            let marks = BarDrawing(zone).marks(on: sheet)
            for box in boxes(marks) {
                XCTAssertTrue(
                    CGRect(x: -0.01, y: -0.01, width: width + 0.02, height: 120.02).contains(box),
                    "\(width): \(box)")
            }
            // Shaft, inner collar and sleeve, then each plate.
            let plates = boxes(marks)[3..<(3 + zone.plates.count)]
            for (box, plate) in zip(plates, zone.plates) {
                XCTAssertEqual(box.height + 1, 120 * CGFloat(plate.height) / 1000, accuracy: 0.01)
                XCTAssertEqual(box.midY, 60, accuracy: 0.01)
            }
            for (one, next) in zip(plates, plates.dropFirst()) {
                XCTAssertEqual(one.maxX + 1, next.minX, accuracy: 0.01, "each against the one before")
            }
            let numbers = marks.compactMap {
                if case .words(let words, _, .middle, _, _, true) = $0 { words } else { nil }
            }
            XCTAssertEqual(numbers, zone.plates.map(\.label))
            // In a mirror, from the other side.
            let mirrored = BarDrawing(zone).marks(
                on: Sheet(size: sheet.size, dark: true, rightToLeft: true, type: 15))
            for (box, other) in zip(boxes(marks), boxes(mirrored)) {
                XCTAssertEqual(box.minX, width - other.maxX, accuracy: 0.01)
            }
        }
        XCTAssertTrue(BarDrawing(zone).aloud.contains(zone.plates[0].label))
        for dark in [true, false] {
            let sheet = sheet(250, 120, dark: dark)
            try keep("bar-\(dark ? "dark" : "light")", sheet, BarDrawing(zone).marks(on: sheet))
        }
    }

    func testTheChartPutsPlacesWhereTheAxesSay() async throws {
        try await charts("en-GB", wide: 360, type: 15)
    }

    /// The longer words on the narrowest phone, and in type twice as large.
    func testTheChartInGermanOnTheNarrowestPhone() async throws {
        try await charts("de-DE", wide: 288, type: 15)
        try await charts("de-DE", wide: 288, type: 30)
    }

    private func charts(_ locale: String, wide: CGFloat, type: CGFloat) async throws {
        let phone = try handset(locale: locale)
        try phone.demoStore()
        await phone.start()
        for lift in ["back-squat", "chin-up", "plank", "deadlift"] {
            guard case .lift(let screen) = try await phone.ask(.lift(exercise: lift, page: 0, all: false)) else {
                return XCTFail("another screen than Lift")
            }
            let chart = try XCTUnwrap(screen.chart, lift)
            let drawing = ChartDrawing(chart)
            let high = drawing.height(type: type)
            let sheet = sheet(wide, high, type: type)
            let marks = drawing.marks(on: sheet)
            let whole = CGRect(x: -0.01, y: -0.01, width: wide + 0.02, height: high + 0.02)
            try keep("chart-\(lift)-\(locale)-\(Int(wide))-\(Int(type))", sheet, marks)
            var lines: [[CGPoint]] = []
            var words: [(CGRect, String)] = []
            for mark in marks {
                switch mark {
                case .box(let box, _, _, _, _):
                    XCTAssertTrue(CGRect(x: 0, y: 0, width: wide, height: high).contains(box))
                case .line(let points, _, _): lines.append(points)
                case .area(let points, _):
                    for point in points {
                        XCTAssertTrue((0...wide).contains(point.x) && (0...high).contains(point.y))
                    }
                case .words(let text, let place, let hold, let size, _, _):
                    let width = Sheet.width(of: text, size: size)
                    let before: CGFloat =
                        switch hold {
                        case .left: 0
                        case .middle: width / 2
                        case .right: width
                        }
                    let box = CGRect(x: place.x - before, y: place.y - size / 2, width: width, height: size)
                    words.append((box, text))
                    XCTAssertTrue(whole.contains(box), "\(lift): \(text) hangs over")
                }
            }
            // The rungs stand as their numbers do: evenly apart where the numbers are.
            let legend = chart.series.filter { $0.kind == .line }.count
            for series in chart.series {
                XCTAssertTrue(words.contains { $0.1 == series.label }, series.label)
            }
            let rungs = lines.dropFirst(legend).prefix(chart.up.ticks.count).compactMap(\.first?.y)
            for (tick, rung) in zip(chart.up.ticks, rungs) {
                let share = CGFloat(tick.at - chart.up.from) / CGFloat(chart.up.to - chart.up.from)
                let line: CGFloat = type * 1.3
                let (bottom, top) = (high - line * 1.4, line * (CGFloat(chart.series.count) + 1.4))
                XCTAssertEqual(rung, bottom - (bottom - top) * share, accuracy: 0.01)
            }
            // No label runs into another.
            for (at, one) in words.enumerated() {
                for other in words[(at + 1)...] {
                    XCTAssertFalse(one.0.intersects(other.0), "\(lift): \(one.1) and \(other.1)")
                }
            }
        }
    }

    private func muscle(
        done: UInt32, planned: UInt32, under: UInt32 = 0, left: UInt32? = nil, right: UInt32? = nil
    ) -> MuscleBar {
        MuscleBar(
            muscle: "quads", plannedHalves: planned, doneHalves: done, leftHalves: left, rightHalves: right,
            direct: 0, total: 0, underSixHalves: under, text: "Quads", detail: "", behind: false)
    }

    func testAMuscleIsAsLongAsItsSets() async throws {
        let sheet = sheet(400, 22)
        func boxes(_ bar: MuscleBar, full: UInt32 = 20) -> [CGRect] {
            self.boxes(MuscleDrawing(bar, full: full).marks(on: sheet))
        }
        XCTAssertEqual(boxes(muscle(done: 10, planned: 15)).map(\.width), [200, 298])
        XCTAssertEqual(boxes(muscle(done: 30, planned: 0)).map(\.width), [400], "no wider than the sheet")
        XCTAssertEqual(boxes(muscle(done: 3, planned: 0), full: 0).map(\.width), [0])
        let sides = boxes(muscle(done: 6, planned: 8, left: 6, right: 10))
        XCTAssertEqual(sides.map(\.width), [120, 200, 158])
        XCTAssertFalse(sides[0].intersects(sides[1]))
        // Sets under six repetitions are hatched, at the end of what was done.
        let marks = MuscleDrawing(muscle(done: 10, planned: 15, under: 4), full: 20).marks(on: sheet)
        let hatch = marks.compactMap { if case .line(let points, _, _) = $0 { points } else { nil } }
        XCTAssertEqual(hatch.count, 20)
        for line in hatch { for point in line { XCTAssertTrue((120...200).contains(point.x), "\(point)") } }
        try keep("muscle", sheet, marks)
    }

    /// Contrast by the formula of WCAG 2 (published: W3C, Web Content Accessibility Guidelines 2.1):
    /// 7 to 1 for what is read at a distance, 4.5 to 1 elsewhere, 3 to 1 for edges and drawings.
    func testContrasts() async {
        func light(_ tint: Tint) -> Double {
            func part(_ value: Double) -> Double {
                value <= 0.03928 ? value / 12.92 : pow((value + 0.055) / 1.055, 2.4)
            }
            return 0.2126 * part(tint.red) + 0.7152 * part(tint.green) + 0.0722 * part(tint.blue)
        }
        func contrast(_ one: Tint, _ other: Tint) -> Double {
            let (a, b) = (light(one), light(other))
            return (max(a, b) + 0.05) / (min(a, b) + 0.05)
        }
        for palette in [Palette.light, .dark] {
            XCTAssertGreaterThanOrEqual(contrast(palette.ink, palette.ground), 7)
            XCTAssertGreaterThanOrEqual(contrast(palette.onBrass, palette.brass), 7)
            XCTAssertGreaterThanOrEqual(contrast(palette.quiet, palette.ground), 4.5)
            XCTAssertGreaterThanOrEqual(contrast(palette.warn, palette.ground), 4.5)
            XCTAssertGreaterThanOrEqual(contrast(palette.outline, palette.ground), 3)
            XCTAssertGreaterThanOrEqual(contrast(palette.steel, palette.ground), 3)
        }
        XCTAssertEqual(Tint("#12181B"), Palette.light.ink)
        XCTAssertNil(Tint("red"))
        XCTAssertNil(Tint("#12181G"))
    }

    func testSoundsAreWhatASystemPlays() async throws {
        let library = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        try Sound.write(to: library)
        try Sound.write(to: library)
        for (sound, seconds) in [(Sound.marks, 2.08), (.over, 0.4)] {
            let data = try Data(contentsOf: library.appendingPathComponent("Sounds/\(sound.file)"))
            XCTAssertEqual(String(decoding: data[0..<4] + data[8..<16], as: UTF8.self), "RIFFWAVEfmt ")
            func number(_ at: Int) -> Int { (0..<4).reduce(0) { $0 | Int(data[at + $1]) << (8 * $1) } }
            XCTAssertEqual(number(4), data.count - 8)
            XCTAssertEqual(number(24), 22_050)
            XCTAssertEqual(number(40), data.count - 44)
            XCTAssertEqual(Double(number(40)) / 2 / 22_050, seconds, accuracy: 0.001)
            XCTAssertLessThan(seconds * 1000, 30_000, "no longer than a notification may sound")
        }
        // The marks are over when the end begins.
        XCTAssertLessThan(2.08, Double(Sound.marksLead) / 1000)
    }

    func testTheClocksOfThisMachineGiveAReading() async throws {
        let clocks = DeviceClocks()
        let (one, two) = (clocks.read(), clocks.read())
        XCTAssertLessThan(abs(one.wallMs - Int64(Date().timeIntervalSince1970 * 1000)), 60_000)
        XCTAssertLessThanOrEqual(try XCTUnwrap(one.bootMs), try XCTUnwrap(two.bootMs))
        XCTAssertEqual(one.bootId, two.bootId)
        // As the core takes it.
        let phone = try handset()
        phone.clocks.set(two)
        if case .failure(let why) = await phone.dispatch(.wake) { XCTFail("\(why)") }
    }

    private func svg(_ sheet: Sheet, _ marks: [Mark]) -> String {
        func colour(_ tint: Tint?) -> String {
            guard let tint else { return "none" }
            let parts = [tint.red, tint.green, tint.blue].map { "\(Int($0 * 255))" }.joined(separator: ",")
            return "rgba(\(parts),\(tint.cover))"
        }
        func anchor(_ hold: Mark.Hold) -> String {
            switch hold {
            case .left: "start"
            case .middle: "middle"
            case .right: "end"
            }
        }
        func path(_ points: [CGPoint]) -> String { points.map { "\($0.x),\($0.y)" }.joined(separator: " ") }
        let drawn = marks.map { mark in
            switch mark {
            case .box(let box, let corner, let fill, let edge, let width):
                "<rect x='\(box.minX)' y='\(box.minY)' width='\(box.width)' height='\(box.height)' rx='\(corner)' fill='\(colour(fill))' stroke='\(colour(edge))' stroke-width='\(width)'/>"
            case .line(let points, let tint, let width):
                "<polyline points='\(path(points))' fill='none' stroke='\(colour(tint))' stroke-width='\(width)'/>"
            case .area(let points, let tint): "<polygon points='\(path(points))' fill='\(colour(tint))'/>"
            case .words(let words, let place, let hold, let size, let tint, let turned):
                """
                <text x='\(place.x)' y='\(place.y)' font-size='\(size)' font-family='sans-serif' \
                text-anchor='\(anchor(hold))' dy='\(size * 0.35)' fill='\(colour(tint))'\
                \(turned ? " font-weight='bold' transform='rotate(-90 \(place.x) \(place.y))'" : "")\
                >\(words)</text>
                """
            }
        }
        let size = "width='\(sheet.size.width)' height='\(sheet.size.height)'"
        return
            "<svg xmlns='http://www.w3.org/2000/svg' \(size)><rect \(size) fill='\(colour(sheet.palette.ground))'/>\(drawn.joined())</svg>\n"
    }
}
