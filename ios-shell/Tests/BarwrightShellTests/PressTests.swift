import Barwright
import XCTest

@testable import BarwrightPresentation

/// How many touches the ways take that a lifter goes most or dreads most. What the phone's own
/// keyboard takes is not counted: a number or a word to look for.
@MainActor final class PressTests: PhoneTests, @unchecked Sendable {
    private let hotel = """
        name = "Hotel"
        unit = "kg"
        also = ["bench"]
        [[dumbbells]]
        name = "Rack"
        from = "5 kg"
        to = "25 kg"
        step = "2.5 kg"
        """
    private let open = """
        name = "Base"
        weeks = 4
        [[session]]
        name = "Lower"
        [[session.exercise]]
        name = "Back squat"
        sets = 2
        reps = "4 or more, stop at 1 left"
        load = "100 kg"
        ramp = "none"
        """

    private func go(_ phone: Handset, _ place: String) async throws {
        try await phone.tap("Go to…")
        try await phone.tap(place)
    }

    private func floor(_ phone: Handset) throws -> FloorScreen {
        guard case .floor(let page) = phone.presenter.shown.page else {
            throw Failed("not on the floor: \(phone.texts())")
        }
        return page.floor
    }

    private func begun(_ plan: String) async throws -> Handset {
        let phone = try handset()
        if case .failure(let why) = await phone.dispatch(.adoptPlan(text: plan)) { throw Failed("\(why)") }
        await phone.start()
        try await phone.tap("Begin")
        return phone
    }

    func testFromTheFirstStartToTheFirstSet() async throws {
        let phone = try handset()
        await phone.start()
        try await go(phone, "Equipment")
        try await phone.tap("New gym, empty, kg")
        try await phone.touch("Add a bar", "Long bar")
        try await phone.touch("Add a size of plate", "A small set")
        for support in ["Rack", "Bench", "Pull-up bar"] { try await phone.touch(support, "Here") }
        try await phone.tap("Use it")
        try await go(phone, "Today")
        try await phone.tap("Make a plan")
        try await phone.touch("A", "Open")
        for (words, name) in [
            ("back squat", "Back squat"), ("bench press", "Bench press"), ("pull-up", "Pull-up"),
        ] {
            try await phone.tap("Add an exercise")
            try await phone.type(in: "Look for", words)
            try await phone.touch(name, "Add it")
        }
        try await phone.touch("Back squat", "Open")
        try await phone.type(in: "Reps", "5")
        try await phone.type(in: "Load", "80 kg")
        guard case .form(let exercise) = phone.presenter.shown.page else { return XCTFail("no form") }
        let out = try XCTUnwrap(exercise.keys.first { $0.id == "leave" })
        // The way out of a part leads to the one around it.
        phone.presenter.send(.act(out.action))
        await phone.settle()
        guard case .form(let session) = phone.presenter.shown.page else { return XCTFail("no form") }
        phone.presenter.send(.act(try XCTUnwrap(session.keys.first { $0.id == "leave" }).action))
        await phone.settle()
        phone.touches += 2
        try await phone.tap("See it")
        try await phone.tap("Adopt it")
        try await go(phone, "Today")
        try await phone.tap("Begin")
        XCTAssertEqual(try floor(phone).call.exercise, "Back squat")
        XCTAssertLessThanOrEqual(phone.touches, 60)
    }

    func testAHotelsGymFitsTheSession() async throws {
        let phone = try handset()
        try await phone.prepare()
        _ = await phone.dispatch(.addGym(text: hotel))
        await phone.start()
        try await go(phone, "Equipment")
        let gym = try XCTUnwrap(phone.keys().map(\.words).first { $0.contains("Hotel") })
        try await phone.tap(gym)
        try await go(phone, "Today")
        try await phone.tap("Fit it to this gym")
        guard case .today(let today) = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        XCTAssertFalse(today.rows.contains(where: \.warns))
        try await phone.tap("Begin")
        _ = try floor(phone)
        XCTAssertLessThanOrEqual(phone.touches, 8)
    }

    func testAMaxIsChangedWithItsLoadsShown() async throws {
        let phone = try handset()
        try await phone.prepare()
        await phone.start()
        try await phone.tap("Maxes and loads")
        try await phone.touch(says: "Bench press: 5 percent less; nothing counts yet")
        XCTAssertTrue(phone.sees("Week 1"), "\(phone.texts())")
        try await phone.tap("Take 92.5 kg")
        XCTAssertLessThanOrEqual(phone.touches, 4)
    }

    func testEightWhereFourWereCalledTakesTwo() async throws {
        let phone = try await begun(open)
        XCTAssertEqual(try floor(phone).thumb.figure?.text, "4")
        phone.touches = 0
        try await phone.tap("8 reps")
        XCTAssertEqual(try floor(phone).thumb.figure?.text, "8")
        let record = try XCTUnwrap(try floor(phone).thumb.main)
        try await phone.tap(record.label)
        XCTAssertEqual(phone.touches, 2)
        guard case .tally(let tally) = try await phone.ask(.tally) else { return XCTFail("no tally") }
        XCTAssertTrue("\(tally.done)".contains("8"), "\(tally.done)")
    }

    func testWhatIsFarFromTheCallIsTyped() async throws {
        let phone = try await begun(open)
        phone.touches = 0
        try await phone.touch(says: "4 reps")
        for key in ["1", "9", "⌫", "7"] { try await phone.tap(key) }
        XCTAssertEqual(try floor(phone).panel?.title, "17 reps")
        try await phone.tap("That is it")
        XCTAssertEqual(try floor(phone).thumb.figure?.text, "17")
        XCTAssertNil(try floor(phone).panel)
        XCTAssertEqual(phone.touches, 6)
    }
}
