import Barwright
import SwiftUI
import XCTest

@testable import BarwrightPresentation

/// The process ends when the system likes: in the middle of a set, with something half entered.
@MainActor final class DeathTests: PhoneTests, @unchecked Sendable {
    private func cluster() async throws -> Handset {
        let phone = try handset()
        let plan = """
            name = "Erg room"
            weeks = 1

            [[session]]
            name = "Evening"

            [[session.exercise]]
            name = "Deadlift"
            ramp = "none"
            sets = 2
            load = "140 kg"
            cluster = { blocks = [2, 2, 1], pause = "20 s" }
            rest = "3:00"
            """
        await phone.dispatch(.adoptPlan(text: plan))
        await phone.start()
        phone.presenter.send(.go(.today(session: nil, minutes: nil)))
        await phone.settle()
        try await phone.tap("Begin")
        return phone
    }

    func testKilledInTheMiddleOfACluster() async throws {
        let phone = try await cluster()
        try await phone.tap(phone.wide)
        XCTAssertTrue(phone.sees("block 2 of 3"), "\(phone.texts())")
        phone.clocks.pass(5)
        // In front, with no word before.
        try await phone.die()
        phone.clocks.pass(3)
        await phone.start()
        XCTAssertTrue(phone.sees("block 2 of 3"), "\(phone.texts())")
        XCTAssertTrue(phone.sees("Pause in the set"), "\(phone.texts())")
        XCTAssertEqual(phone.device.pending.map(\.after), [9, 12])
        XCTAssertTrue(phone.device.awake)
        // And on it goes, each block where it stood.
        for block in ["block 3 of 3", "Set 2 of 2, block 1 of 3"] {
            try await phone.tap(phone.wide)
            XCTAssertTrue(phone.sees(block), "\(phone.texts())")
            try await phone.die()
            await phone.start()
            XCTAssertTrue(phone.sees(block), "\(phone.texts())")
        }
        // Undo reaches back over every death.
        for block in ["block 3 of 3", "block 2 of 3", "block 1 of 3"] {
            try await phone.tap("Undo")
            XCTAssertTrue(phone.sees(block), "\(phone.texts())")
        }
    }

    func testATapBeforeTheKillIsOnDiskOnceItIsShown() async throws {
        let phone = try await cluster()
        for turn in 0..<6 {
            guard case .floor(let page) = phone.presenter.shown.page else { break }
            let part = try XCTUnwrap(page.floor.part)
            let label = page.floor.thumb.main?.label ?? ""
            try await phone.tap(label)
            let shown = phone.presenter.shown.page
            try await phone.die()
            let floor = try? await phone.floor()
            if case .floor(let after) = shown {
                XCTAssertEqual(floor?.part, after.floor.part, "after \(part), turn \(turn)")
            }
            await phone.start()
        }
    }

    func testWhatIsHalfEnteredOutlivesTheProcess() async throws {
        let phone = try await cluster()
        try await phone.tap("−")
        XCTAssertTrue(phone.sees("1 rep"), "\(phone.texts())")
        try await phone.tap("Go to…")
        try await phone.tap("Equipment")
        try await phone.tap("Back")
        XCTAssertTrue(phone.sees("1 rep"), "\(phone.texts())")
        await phone.leave()
        try await phone.die()
        await phone.start()
        XCTAssertTrue(phone.sees("1 rep"), "\(phone.texts())")
    }

    func testEveryLookOutlivesTheProcess() async throws {
        let looks: [Look] = [
            .today(session: nil, minutes: nil), .today(session: "2.1", minutes: 45),
            .floor(draft: Draft(amount: 7, load: "112.5", helped: 1, correct: "0.1.0", panel: "more")),
            .floor(draft: Draft()), .tally, .weeks, .lift(exercise: "back-squat", page: 3, all: false),
            .balance(weeks: nil), .balance(weeks: 4), .equipment, .plan(text: nil, week: nil),
            .plan(text: "name = \"x\"", week: 2), .form(of: .gym, at: "bar.0", text: "a"),
        ]
        for look in looks {
            var trail = Trail()
            trail.look = look
            trail.past = looks
            XCTAssertEqual(Trail(try XCTUnwrap(trail.data)), trail)
        }
        XCTAssertNil(Trail(Data("not ours".utf8)))
        // A long file has to be opened again.
        var trail = Trail()
        trail.look = .plan(text: String(repeating: "x", count: 200_000), week: nil)
        XCTAssertEqual(Trail(try XCTUnwrap(trail.data))?.look, .plan(text: nil, week: nil))
    }

    func testAPlanFromAnotherAppIsReadAndAdoptedByTouch() async throws {
        let phone = try handset()
        // Handed over as the program starts.
        phone.presenter.picked(.plan, Data(try demo("plan.toml").utf8))
        await phone.start()
        XCTAssertTrue(phone.sees("Boathouse off-season"), "\(phone.texts())")
        try await phone.tap("Adopt")
        guard case .weeks = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        phone.presenter.picked(.gym, Data(try demo("gym.toml").utf8))
        await phone.settle()
        XCTAssertTrue(phone.sees("Boathouse cellar"), "\(phone.texts())")
    }

    func testAFaultIsShownInItsPlace() async throws {
        let phone = try handset()
        await phone.start()
        let wrong = try demo("plan.toml").replacingOccurrences(
            of: "weeks = 8\nminutes", with: "weeeks = 8\nminutes")
        phone.presenter.picked(.plan, Data(wrong.utf8))
        await phone.settle()
        for words in ["Line 5, column 1", "weeeks = 8", "^^^^^^"] {
            XCTAssertTrue(phone.sees(words), "\(phone.texts())")
        }
        XCTAssertFalse(phone.hasKey("Adopt"))
        try await phone.tap("Open a file")
        XCTAssertEqual(phone.device.asked.last, .pick(.plan))
    }

    func testACopyOfTheRecordsIsHandedOn() async throws {
        let phone = try await cluster()
        try await phone.tap(phone.wide)
        let before = try await phone.floor()
        try await phone.tap("Go to…")
        try await phone.tap("Share a copy")
        guard case .share(let path, "application/vnd.sqlite3") = phone.device.asked.last else {
            return XCTFail("\(phone.device.asked)")
        }
        guard case .floor = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        let copy = try Engine.open(path: path, locale: "en-GB")
        guard
            case .floor(let floor) = try copy.view(
                look: .floor(draft: Draft()), reading: phone.clocks.read()
            ).screen
        else { return XCTFail("another screen than the floor") }
        XCTAssertEqual(floor, before)
        try copy.shutDown()
    }

    func testAFileThatCantBeReadIsSaid() async throws {
        let phone = try handset()
        await phone.start()
        for data in [nil, Data([0xFF, 0xFE, 0xFF])] {
            phone.presenter.picked(.plan, data)
            await phone.settle()
            XCTAssertTrue(phone.sees("can't be read"), "\(phone.texts())")
            try await phone.tap("Understood")
        }
    }
}
