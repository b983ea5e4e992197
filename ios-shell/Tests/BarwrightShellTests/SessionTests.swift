import Barwright
import SwiftUI
import XCTest

@testable import BarwrightPresentation

/// Whole sessions by touch, with the real core.
@MainActor final class SessionTests: PhoneTests, @unchecked Sendable {
    /// Records whatever is next the way most taps do, and says which kind of key did it.
    private func recordNext(_ phone: Handset, turn: Int) async throws -> String {
        guard case .floor(let page) = phone.presenter.shown.page else { throw Failed("not on the floor") }
        if page.floor.bar.line.hasPrefix("Choose a load") { return try await chooseLoad(phone) }
        if let main = page.floor.thumb.main {
            try await phone.tap(main.label)
            return main.label
        }
        let keys = page.floor.thumb.effort
        try await phone.tap(keys[turn % 4].key.label)
        return "effort"
    }

    /// The plan leaves the load to the lifter: one that this gym makes, or the exercise is skipped.
    private func chooseLoad(_ phone: Handset) async throws -> String {
        try await phone.tap("More…")
        try await phone.tap("Choose a load…")
        for load in ["16 kg", "15 kg", "20 kg", "7 kg"] {
            try await phone.type("Load", load)
            if !phone.sees("can't make") { return "load" }
            try await phone.tap("Understood")
        }
        try await phone.tap("Back")
        try await phone.tap("More…")
        try await phone.tap("Skip the rest of this exercise")
        return "skipped"
    }

    private func run(_ phone: Handset, each: (Int) async throws -> Void = { _ in }) async throws -> [String] {
        var kinds: [String] = []
        for turn in 0..<200 {
            guard case .floor = phone.presenter.shown.page else { return kinds }
            kinds.append(try await recordNext(phone, turn: turn))
            XCTAssertNil(phone.presenter.shown.word, "\(kinds)")
            try await each(turn)
            await phone.pass(45)
        }
        throw Failed("no end: \(kinds)")
    }

    func testAnOrdinarySessionIsOneTapASet() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        let kinds = try await run(phone)
        XCTAssertTrue(kinds.contains("effort") && kinds.contains("Racked"), "\(kinds)")
        XCTAssertEqual(kinds.last, "Finish the session")
        guard case .tally = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        XCTAssertTrue(phone.sees("Back squat"), "\(phone.texts())")
        let engine = try XCTUnwrap(phone.opened.last)
        XCTAssertEqual(engine.misplaced, 0, "every call on the one queue")
        // Only loads that were tried out.
        XCTAssertEqual(engine.refused.filter { $0 != .cannotMake }, [])
    }

    func testOddKindsOfSetsGoByTheSameKeys() async throws {
        let phone = try handset()
        try await phone.begin("1.2")
        let kinds = try await run(phone)
        XCTAssertTrue(kinds.contains { $0.hasPrefix("Done: next") }, "\(kinds)")
        XCTAssertTrue(kinds.contains("Start the clock"), "\(kinds)")
        XCTAssertTrue(kinds.contains("Done"), "\(kinds)")
        XCTAssertEqual(kinds.last, "Finish the session")
    }

    func testInterruptedEverywhereItLosesNothing() async throws {
        let phone = try handset()
        try await phone.begin("1.3")
        var deaths = 0
        let kinds = try await run(phone) { turn in
            guard case .floor(let page) = phone.presenter.shown.page else { return }
            let before = page.floor
            if turn % 5 == 2 {
                // Killed in front, with no time to save where it was.
                try await phone.die()
                await phone.start()
                deaths += 1
            } else if turn % 5 == 4 {
                await phone.leave()
                await phone.start()
            } else {
                return
            }
            guard case .floor(let after) = phone.presenter.shown.page else {
                return XCTFail("\(phone.texts())")
            }
            XCTAssertEqual(after.floor.part, before.part)
            XCTAssertEqual(after.floor.call, before.call)
            XCTAssertEqual(after.floor.bar, before.bar)
        }
        XCTAssertGreaterThan(deaths, 2)
        XCTAssertGreaterThan(kinds.count, 14)
        XCTAssertEqual(kinds.last, "Finish the session")
    }

    func testTheFigureStepsAndIsWhatIsRecorded() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        XCTAssertTrue(phone.sees("3 reps"))
        try await phone.tap("−")
        XCTAssertTrue(phone.sees("2 reps"), "\(phone.texts())")
        try await phone.tap(phone.wide)
        XCTAssertEqual(phone.device.asked.filter { $0 == .feel(.recorded) }.count, 1)
        try await phone.tap("Undo")
        XCTAssertTrue(phone.hasKey("Redo"))
        XCTAssertEqual(phone.device.asked.filter { $0 == .feel(.changed) }.count, 1)
    }

    func testHalfARepetitionLiesBehindALongPress() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        while phone.hasWide, !phone.hasKey("No effort called") {
            try await phone.tap(phone.wide)
            await phone.pass(200)
        }
        let before = try await phone.floor()
        XCTAssertTrue(phone.sees("Racked, RPE"), "\(phone.texts())")
        try await phone.hold("8")
        let after = try await phone.floor()
        XCTAssertNotEqual(after.part, before.part)
        // What the core wrote down is eight and a half.
        try await phone.tap("Undo")
        try await phone.tap("Redo")
        guard case .tally(let tally) = try await phone.ask(.tally) else {
            return XCTFail("another screen than the tally")
        }
        let rows = tally.done.map { "\($0.text) \($0.detail)" }
        XCTAssertTrue(rows.contains { $0.contains("RPE 8.5") }, "\(rows)")
    }

    func testASecondTapOnTheSameSetIsRefusedInWords() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        let key = try phone.key(phone.wide)
        key.tap?()
        key.tap?()
        await phone.settle()
        XCTAssertEqual(phone.opened.last?.refused, [.stale])
        XCTAssertTrue(phone.sees("recorded already"), "\(phone.texts())")
        try await phone.tap("Understood")
        XCTAssertFalse(phone.sees("recorded already"))
    }

    func testEveryKeySaysWhatItDoesAndIsHighEnough() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        for turn in 0..<6 {
            let places = ["Go to…", "Back"]
            // Less than half as high as what records a set as it was called.
            let second = ["No effort called", "Set cut short…"]
            for key in phone.keys() {
                let says = try XCTUnwrap(key.label, key.words)
                XCTAssertFalse(says.isEmpty)
                let high = key.all.compactMap(\.highest).max() ?? 0
                if second.contains(key.words) {
                    XCTAssertLessThan(high, 32, key.words)
                } else {
                    XCTAssertGreaterThanOrEqual(high, places.contains(key.words) ? 48 : 64, key.words)
                }
            }
            for drawing in phone.nodes() where drawing.kind == .drawing && !drawing.hidden {
                XCTAssertFalse(try XCTUnwrap(drawing.label).isEmpty)
            }
            _ = try await recordNext(phone, turn: turn)
            await phone.pass(60)
        }
    }

    func testEveryScreenShowsWhatTheCoreSays() async throws {
        let phone = try handset()
        try phone.demoStore()
        await phone.start()
        let looks: [Look] = [
            .today(session: nil, minutes: nil), .weeks, .balance(weeks: nil), .balance(weeks: 4),
            .lift(exercise: "back-squat", page: 0, all: false), .equipment, .plan(text: nil, week: nil),
            .plan(text: nil, week: 2), .tally, .floor(draft: Draft()), .care,
            .form(of: .start, at: "", text: ""), .form(of: .maxes, at: "", text: ""),
            .form(of: .exercises, at: "", text: ""), .form(of: .records, at: "", text: ""),
        ]
        for look in looks {
            for scheme in [ColorScheme.light, .dark] {
                for tall in [UserInterfaceSizeClass.regular, .compact] {
                    EnvironmentValues.now.colorScheme = scheme
                    EnvironmentValues.now.verticalSizeClass = tall
                    EnvironmentValues.now.layoutDirection = scheme == .dark ? .rightToLeft : .leftToRight
                    EnvironmentValues.now.dynamicTypeSize = scheme == .dark ? .accessibility2 : .large
                    defer { EnvironmentValues.now = EnvironmentValues() }
                    phone.presenter.send(.go(look))
                    await phone.settle()
                    XCTAssertNil(phone.presenter.shown.word, "\(look)")
                    let title = try XCTUnwrap(phone.presenter.shown.page).title
                    XCTAssertTrue(phone.sees(title), "\(look): \(phone.texts())")
                    XCTAssertGreaterThan(phone.texts().count, 3, "\(look)")
                    XCTAssertTrue(phone.nodes().contains(where: \.header))
                }
            }
        }
        phone.presenter.send(.go(.lift(exercise: "back-squat", page: 0, all: false)))
        await phone.settle()
        guard case .lift(let lift) = phone.presenter.shown.page else { return XCTFail("no lift") }
        let chart = try XCTUnwrap(lift.chart)
        let drawing = try XCTUnwrap(phone.nodes().first { $0.kind == .drawing })
        XCTAssertEqual(drawing.label, chart.aloud)
        XCTAssertTrue(drawing.text.contains(chart.up.label), drawing.text)
    }

    /// Every list that opens over the thumb zone, and every list in it, can be shown and left.
    func testEveryPanelOpensAndCloses() async throws {
        let phone = try handset()
        try phone.demoStore()
        await phone.start()
        try await phone.tap("Begin")
        var titles: Set<String> = []
        for turn in 0..<14 {
            guard case .floor(let page) = phone.presenter.shown.page else { break }
            let thumb = page.floor.thumb
            let first = [thumb.more, thumb.ended, page.floor.bar.holds].compactMap { $0 }
            var waiting = first
            var seen: Set<String> = []
            while let key = waiting.popLast() {
                guard case .show(let look) = key.action, case .floor = look, key.enabled,
                    seen.insert("\(look)").inserted
                else { continue }
                phone.presenter.send(.act(key.action))
                await phone.settle()
                XCTAssertNil(phone.presenter.shown.word, "\(key)")
                guard case .floor(let opened) = phone.presenter.shown.page, let panel = opened.floor.panel
                else { continue }
                titles.insert(panel.title)
                XCTAssertTrue(phone.sees(panel.title), "\(phone.texts())")
                for field in panel.fields {
                    XCTAssertTrue(phone.nodes().contains { $0.label == field.label })
                }
                // No deeper than the lists themselves: a figure steps without an end.
                if seen.count < 40 { waiting += panel.keys + panel.rows.flatMap(\.keys) }
            }
            phone.presenter.send(.go(.floor(draft: Draft())))
            await phone.settle()
            let after = try await phone.floor()
            XCTAssertEqual(after.part, page.floor.part, "looking changed nothing")
            XCTAssertEqual(after.thumb, page.floor.thumb)
            _ = try await recordNext(phone, turn: turn)
            await phone.pass(120)
        }
        XCTAssertGreaterThan(titles.count, 5, "\(titles)")
    }

    func testWaysThereAndBack() async throws {
        let phone = try handset()
        try await phone.prepare()
        await phone.start()
        for (place, title) in [("Weeks", "Boathouse off-season"), ("Equipment", "Boathouse cellar")] {
            try await phone.tap("Go to…")
            try await phone.tap(place)
            XCTAssertEqual(phone.presenter.shown.page?.title, title)
        }
        try await phone.tap("Back")
        guard case .weeks = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        try await phone.tap("Back")
        guard case .today = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        XCTAssertFalse(phone.hasKey("Back"))
        try await phone.tap("Begin")
        try await phone.tap("More…")
        XCTAssertTrue(phone.hasKey("Skip this set"))
        // Out of a panel first.
        try await phone.tap("Back")
        XCTAssertFalse(phone.hasKey("Skip this set"))
        XCTAssertTrue(phone.hasWide)
    }

    /// German words are long: the grid of keys leaves the longest its room, whatever the type's size.
    func testNoWordOnAKeyIsBroken() async throws {
        let phone = try handset(locale: "de-DE")
        try phone.demoStore()
        await phone.start()
        try await phone.tap("Beginnen")
        try await phone.tap("Mehr…")
        guard case .floor(let page) = phone.presenter.shown.page, let panel = page.floor.panel else {
            return XCTFail("\(phone.texts())")
        }
        let longest = panel.keys.flatMap { $0.label.split(separator: " ") }.map(\.count).max() ?? 0
        XCTAssertGreaterThan(longest, 11, "\(panel.keys.map(\.label))")
        for letter in [9.5, 19.0] {
            XCTAssertGreaterThanOrEqual(panel.keys.narrowest(letter: letter), letter * Double(longest))
            XCTAssertEqual(Array(panel.keys.prefix(0)).narrowest(letter: letter), 11 * letter)
        }
    }

    func testNumbersFollowTheRegion() async throws {
        let phone = try handset(locale: "nl-NL")
        try await phone.begin("1.1")
        try await phone.tap(phone.wide)
        for _ in 0..<3 where phone.hasWide {
            try await phone.tap(phone.wide)
            await phone.pass(100)
        }
        let texts = phone.texts().joined(separator: " ")
        XCTAssertNotNil(texts.range(of: "[0-9],[0-9]", options: .regularExpression), texts)
    }
}
