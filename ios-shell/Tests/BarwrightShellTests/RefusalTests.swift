import Barwright
import SwiftUI
import XCTest

@testable import BarwrightPresentation

/// Every way in which the core does not do what was asked: said in words, and nothing is lost.
@MainActor final class RefusalTests: PhoneTests, @unchecked Sendable {
    /// Two exercises: one with a load, one without anything to go by.
    private static let plan = """
        name = "Erg room"
        weeks = 1

        [[session]]
        name = "Evening"

        [[session.exercise]]
        name = "Back squat"
        sets = 2
        reps = 5
        load = "60 kg"
        rest = "2:00"
        ramp = "none"

        [[session.exercise]]
        name = "Goblet squat"
        sets = 1
        reps = 10
        """

    private func onTheFloor() async throws -> Handset {
        let phone = try handset()
        await phone.dispatch(.adoptPlan(text: Self.plan))
        await phone.start()
        phone.presenter.send(.go(.today(session: nil, minutes: nil)))
        await phone.settle()
        try await phone.tap("Begin")
        return phone
    }

    private func atHome() async throws -> Handset {
        let phone = try handset()
        await phone.start()
        return phone
    }

    private func send(_ phone: Handset, _ intent: Intent) async {
        phone.presenter.send(.act(.do(intent: intent, session: nil, then: nil)))
        await phone.settle()
    }

    /// A way into each refusal. A code that joins the contract has no way in here, and this no longer
    /// compiles.
    private func provoke(_ code: RefusalCode) async throws -> Handset {
        switch code {
        case .badReading:
            let phone = try await onTheFloor()
            let was = phone.clocks.read()
            phone.clocks.set(Reading(wallMs: .max, offsetMinutes: 0))
            phone.presenter.send(.act(.do(intent: .undo, session: nil, then: nil)))
            phone.clocks.set(was)
            await phone.settle()
            return phone
        case .noSession:
            let phone = try await atHome()
            await send(phone, .pause)
            return phone
        case .sessionRunning:
            let phone = try await onTheFloor()
            await send(phone, .begin(session: nil, minutes: nil))
            return phone
        case .nothingLeft:
            let phone = try await onTheFloor()
            await send(phone, .skipExercise(entry: 0))
            await send(phone, .skipExercise(entry: 1))
            await send(phone, .skipSet)
            return phone
        case .notHere:
            let phone = try await onTheFloor()
            phone.presenter.send(.write(field: "no such field", text: "1"))
            await phone.settle()
            return phone
        case .stale:
            let phone = try await onTheFloor()
            let key = try phone.key(phone.wide)
            key.tap?()
            key.tap?()
            await phone.settle()
            return phone
        case .badValue:
            let phone = try await onTheFloor()
            phone.presenter.send(.write(field: "body-mass", text: "much"))
            await phone.settle()
            return phone
        case .cannotMake:
            let phone = try await onTheFloor()
            await send(phone, .changeLoad(entry: 0, load: "60.123 kg", onlyNext: false, sure: false))
            return phone
        case .loadNeeded:
            let phone = try await onTheFloor()
            await send(phone, .skipExercise(entry: 0))
            try await phone.tap(phone.wide)
            return phone
        case .ask:
            let phone = try handset()
            try phone.demoStore()
            await phone.start()
            try await phone.tap("Begin")
            await send(phone, .takeUp(entry: 1))
            await send(phone, .changeLoad(entry: 1, load: "200 kg", onlyNext: true, sure: false))
            return phone
        case .tooMany:
            let phone = try await onTheFloor()
            for _ in 0..<300 where phone.presenter.shown.word == nil {
                await send(phone, .addSet(entry: 0))
            }
            return phone
        case .alreadySo:
            let phone = try await onTheFloor()
            await send(phone, .restBy(seconds: 20))
            return phone
        case .nothingToUndo:
            let phone = try await onTheFloor()
            await send(phone, .redo)
            return phone
        case .nothingToGoBy:
            let phone = try await atHome()
            phone.presenter.send(.go(.weeks))
            await phone.settle()
            return phone
        case .faults:
            let phone = try await onTheFloor()
            await send(phone, .adoptPlan(text: "weeks = many"))
            return phone
        }
    }

    func testEveryRefusalIsSaidAndChangesNothing() async throws {
        let codes: [RefusalCode] = [
            .badReading, .noSession, .sessionRunning, .nothingLeft, .notHere, .stale, .badValue,
            .cannotMake, .loadNeeded, .ask, .tooMany, .alreadySo, .nothingToUndo, .nothingToGoBy, .faults,
        ]
        for code in codes {
            let phone = try await provoke(code)
            XCTAssertEqual(phone.opened.last?.refused, [code])
            let word = try XCTUnwrap(phone.presenter.shown.word, "\(code)")
            XCTAssertEqual(phone.device.asked.last, .announce(word.text))
            XCTAssertTrue(phone.sees(word.text))
            XCTAssertFalse(word.text.hasSuffix("!"))
            // The page stays where it was, and the word goes with its answer.
            let page = try XCTUnwrap(phone.presenter.shown.page, "\(code)")
            try await phone.tap(word.no)
            XCTAssertNil(phone.presenter.shown.word)
            XCTAssertEqual(phone.presenter.shown.page, page, "\(code)")
            // And the next look finds the core as it was.
            switch page {
            case .floor(let floor):
                let part = try await phone.floor().part
                XCTAssertEqual(part, floor.floor.part, "\(code)")
            case .today: break
            default: XCTFail("\(code): another page")
            }
        }
    }

    func testWhatIsAskedCanBeMeant() async throws {
        let phone = try await provoke(.ask)
        XCTAssertTrue(phone.hasKey("Do it all the same"))
        try await phone.tap("Do it all the same")
        XCTAssertNil(phone.presenter.shown.word)
        let meant = try await firstWorkLoad(phone)
        XCTAssertEqual(meant, "200 kg")

        let other = try await provoke(.ask)
        try await other.tap("Leave it as it is")
        XCTAssertNil(other.presenter.shown.word)
        let left = try await firstWorkLoad(other)
        XCTAssertEqual(left, "115 kg")
    }

    /// What stands on the bar once the warm-up is done.
    private func firstWorkLoad(_ phone: Handset) async throws -> String {
        for _ in 0..<10 {
            let floor = try await phone.floor()
            if !floor.call.sentence.hasPrefix("Ramp set") { return floor.bar.total }
            try await phone.tap(phone.wide)
        }
        throw Failed("nothing but warm-ups")
    }

    /// An engine that answers every call with one error.
    private final class Failing: Asked, @unchecked Sendable {
        let error: EngineError
        init(_ error: EngineError) { self.error = error }
        func act(action: Action, reading: Reading) throws -> Answer { throw error }
        func suspend() throws { throw error }
        func shutDown() throws { throw error }
        func backUp(path: String) throws -> UInt64 { throw error }
    }

    private func failing(_ error: EngineError) -> Core {
        Core(open: { Failing(error) }, recover: { throw error })
    }

    private func word(of core: Core) async throws -> String {
        let phone = try handset()
        let presenter = Presenter(
            core: core, clocks: phone.clocks, device: phone.device, said: Said(phone.settings))
        presenter.comesToFront()
        await withCheckedContinuation { done in
            core.view(.weeks, at: phone.clocks.read()) { _ in done.resume() }
        }
        return try XCTUnwrap(presenter.shown.word).text
    }

    func testADefectIsSaidWithWhatToSend() async throws {
        let error = EngineError.Broken(reason: "Something broke inside.", report: "barwright 0: it broke")
        let text = try await word(of: failing(error))
        XCTAssertEqual(text, "Something broke inside.\nbarwright 0: it broke")
    }

    func testAFileThatCantBeOpenedIsSaid() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        let path = folder.appendingPathComponent("log.db").path
        let core = Core(locale: { "en-GB" }) { path }
        let text = try await word(of: core)
        XCTAssertTrue(text.hasPrefix("There is no folder"), text)
        XCTAssertTrue(text.hasSuffix(path), "where it lies: \(text)")
        core.end(at: TestClocks().read())
    }

    func testBeforeTheFirstScreenThereIsNoDeadEnd() async throws {
        let phone = try handset()
        let other = try Engine.open(path: phone.path, locale: "en-GB")
        await phone.start()
        XCTAssertNil(phone.presenter.shown.page)
        XCTAssertTrue(phone.sees("Another program has this file open"), "\(phone.texts())")
        try await phone.tap("Leave it as it is")
        XCTAssertTrue(phone.sees("Another program has this file open"), "\(phone.texts())")
        try other.shutDown()
        try await phone.tap("Leave it as it is")
        XCTAssertNil(phone.presenter.shown.word)
        guard case .today = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
    }

    func testADamagedFileIsSetAsideAndReadWhenThatIsMeant() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        try await phone.tap(phone.wide)
        phone.presenter.ends()
        var bytes = try Data(contentsOf: URL(fileURLWithPath: phone.path))
        // The last entries of the log, somewhere in the file: a word of the plan is spoilt.
        let word = try XCTUnwrap(bytes.range(of: Data("Box jump".utf8), options: .backwards))
        bytes.replaceSubrange(word, with: Data("Boxxjump".utf8))
        try bytes.write(to: URL(fileURLWithPath: phone.path))
        await phone.start()
        XCTAssertTrue(phone.sees("damaged"), "\(phone.texts())")
        try await phone.tap("Set it aside and read what is good")
        let text = try XCTUnwrap(phone.presenter.shown.word).text
        XCTAssertTrue(text.contains(phone.path), text)
        XCTAssertFalse(text.contains("is damaged"), text)
        try await phone.tap("Understood")
        XCTAssertNotNil(phone.presenter.shown.page)
        let beside = try FileManager.default.contentsOfDirectory(atPath: phone.folder.path + "/store")
        XCTAssertTrue(beside.contains { $0 != "barwright.db" && $0.hasPrefix("barwright.db") }, "\(beside)")
    }

    func testNothingIsSetAsideThatIsNotDamaged() async throws {
        let phone = try handset()
        let other = try Engine.open(path: phone.path, locale: "en-GB")
        await phone.start()
        XCTAssertTrue(phone.sees("Another program has this file open"), "\(phone.texts())")
        try await phone.tap("Set it aside and read what is good")
        XCTAssertTrue(phone.sees("Another program has this file open"), "\(phone.texts())")
        try other.shutDown()
        try await phone.tap("Set it aside and read what is good")
        let files = try FileManager.default.contentsOfDirectory(atPath: phone.folder.path + "/store")
        XCTAssertTrue(Set(files).isSubset(of: ["barwright.db", "barwright.db-wal"]), "\(files)")
        XCTAssertEqual(phone.presenter.shown.word?.yes, nil, "\(phone.texts())")
    }

    func testAHeaderThatAloneSaysAnotherReleaseIsLeftAsItIs() async throws {
        let phone = try handset()
        await phone.start()
        phone.presenter.ends()
        // The version of its layout in the header alone: the file says another, so it is spoiled.
        var bytes = try Data(contentsOf: URL(fileURLWithPath: phone.path))
        bytes.replaceSubrange(60..<64, with: [0x7F, 0, 0, 0])
        try bytes.write(to: URL(fileURLWithPath: phone.path))
        await phone.start()
        XCTAssertTrue(phone.sees("The file is damaged"), "\(phone.texts())")
        XCTAssertEqual(try Data(contentsOf: URL(fileURLWithPath: phone.path)), bytes)
    }

    func testAfterTheEndTheNextCallOpensAgain() async throws {
        let phone = try await onTheFloor()
        phone.presenter.ends()
        try await phone.tap(phone.wide)
        XCTAssertNil(phone.presenter.shown.word)
        let text = try await word(of: failing(.Closed(reason: "This was shut down.")))
        XCTAssertEqual(text, "This was shut down.")
    }
}
