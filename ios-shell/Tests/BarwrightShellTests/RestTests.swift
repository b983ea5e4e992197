import Barwright
import SwiftUI
import XCTest

@testable import BarwrightPresentation

/// What goes on while a rest runs: notifications, the countdown, restarts and clocks.
@MainActor final class RestTests: PhoneTests, @unchecked Sendable {
    /// A rest of a minute, begun by touch.
    private func resting() async throws -> Handset {
        let phone = try handset()
        try await phone.begin("1.1")
        try await phone.tap(phone.wide)
        return phone
    }

    private func countdown(_ phone: Handset) throws -> Countdown {
        guard case .floor(let page) = phone.presenter.shown.page else { throw Failed("not on the floor") }
        return try XCTUnwrap(page.countdown)
    }

    private func ends(_ countdown: Countdown) -> Int64 {
        Int64((countdown.interval.upperBound.timeIntervalSince1970 * 1000).rounded())
    }

    func testThreeMarksBeforeTheDeadlineAndOneAtIt() async throws {
        let phone = try await resting()
        XCTAssertEqual(phone.device.pending.map(\.id), ["marks", "over"])
        XCTAssertEqual(phone.device.pending.map(\.after), [57, 60])
        XCTAssertEqual(phone.device.pending.map(\.sound), [.marks, .over])
        let over = try XCTUnwrap(phone.device.pending.last)
        XCTAssertEqual(over.title, "Rest over.")
        XCTAssertTrue(over.text.contains("Box jump"), over.text)
        XCTAssertEqual(over.keys.map(\.label), ["Done", "+20 s"])
        // What is only heard has no words and no keys.
        XCTAssertEqual(phone.device.pending[0].title + phone.device.pending[0].text, "")
        XCTAssertEqual(phone.device.pending[0].keys, [])
    }

    func testTheSystemCountsAndNothingPolls() async throws {
        let phone = try await resting()
        let countdown = try countdown(phone)
        XCTAssertTrue(countdown.down)
        XCTAssertEqual(countdown.sign, "")
        XCTAssertEqual(ends(countdown), phone.clocks.read().wallMs + 60_000)
        XCTAssertTrue(phone.sees("⏳"), "\(phone.texts())")
        // One call, at the end; none on the way there.
        XCTAssertEqual(phone.device.lookIn, 60_000)
        await phone.pass(30)
        XCTAssertEqual(phone.device.lookIn, 60_000, "nothing was asked for meanwhile")
        XCTAssertEqual(try self.countdown(phone), countdown)
        await phone.pass(30)
        phone.presenter.lookAgain()
        await phone.settle()
        XCTAssertEqual(phone.device.asked.suffix(2), [.feel(.over), .announce("Rest 0:00")])
        let over = try self.countdown(phone)
        XCTAssertFalse(over.down)
        XCTAssertEqual(over.sign, "+")
        XCTAssertTrue(phone.sees("⏱"), "\(phone.texts())")
        XCTAssertNil(phone.device.lookIn, "and none when it counts up")
        phone.presenter.lookAgain()
        await phone.settle()
        XCTAssertEqual(phone.device.asked.filter { $0 == .feel(.over) }.count, 1)
    }

    func testLongerShorterUndoAndTheNextSetMoveTheRing() async throws {
        let phone = try await resting()
        await phone.pass(10)
        try await phone.tap("+20 s")
        XCTAssertEqual(phone.device.pending.map(\.after), [67, 70])
        try await phone.tap("−20 s")
        XCTAssertEqual(phone.device.pending.map(\.after), [47, 50])
        try await phone.tap(phone.wide)
        XCTAssertEqual(phone.device.pending.map(\.after), [57, 60])
        try await phone.tap("Undo")
        XCTAssertEqual(phone.device.pending.map(\.after), [47, 50], "its rest is back as it stood")
        try await phone.tap("Undo")
        try await phone.tap("Undo")
        try await phone.tap("Undo")
        XCTAssertEqual(phone.device.pending, [])
        XCTAssertEqual(phone.device.asked.last, .withdraw)
    }

    func testAPauseTooShortForMarksHasItsEndAlone() async {
        let reading = TestClocks().read()
        func ring(in milliseconds: Int64, boot: Bool) -> [Notice] {
            let at = RingAt(
                wallMs: reading.wallMs + milliseconds,
                bootMs: boot ? reading.bootMs.map { $0 + milliseconds } : nil, text: "Go", next: "2 reps")
            return Notice.ring(at, floor: nil, at: reading)
        }
        for boot in [true, false] {
            XCTAssertEqual(ring(in: 3000, boot: boot).map(\.id), ["over"])
            XCTAssertEqual(ring(in: 3001, boot: boot).map(\.id), ["marks", "over"])
            XCTAssertEqual(ring(in: 0, boot: boot), [])
            XCTAssertEqual(ring(in: -5, boot: boot), [])
        }
    }

    func testRecordedFromTheLockScreenAndNeverTwice() async throws {
        let phone = try await resting()
        await phone.leave()
        let over = try XCTUnwrap(phone.device.pending.last)
        let before = try await phone.floor()
        XCTAssertEqual(over.part, before.part)
        phone.clocks.pass(60)
        func tap() async {
            await withCheckedContinuation { done in
                phone.presenter.noticeTapped(key: over.keys[0].id, part: over.part) { done.resume() }
            }
        }
        await tap()
        // Given up again: the phone is in a pocket.
        try Engine.open(path: phone.path, locale: "en-GB").shutDown()
        let after = try await phone.floor()
        XCTAssertNotEqual(after.part, before.part)
        XCTAssertNotEqual(phone.device.pending.last?.part, over.part, "the ring of the next rest")
        // The old notification is behind now: its key records nothing on the next set.
        await tap()
        let still = try await phone.floor()
        XCTAssertEqual(still.part, after.part)
        XCTAssertNil(phone.presenter.shown.word)
    }

    func testANotificationWakesAProcessThatWasEnded() async throws {
        let phone = try await resting()
        let over = try XCTUnwrap(phone.device.pending.last)
        let before = try await phone.floor()
        await phone.leave()
        try await phone.die()
        phone.clocks.pass(60)
        await withCheckedContinuation { done in
            phone.presenter.noticeTapped(key: over.keys[0].id, part: over.part) { done.resume() }
        }
        let after = try await phone.floor()
        XCTAssertNotEqual(after.part, before.part)
        await phone.start()
        guard case .floor(let page) = phone.presenter.shown.page else { return XCTFail("\(phone.texts())") }
        XCTAssertEqual(page.floor.part, after.part)
    }

    func testARestartSaysSoLosesNothingAndRingsAgain() async throws {
        let phone = try await resting()
        await phone.leave()
        try await phone.die()
        phone.clocks.restart(after: 20)
        await phone.start()
        XCTAssertTrue(phone.sees("restarted"), "\(phone.texts())")
        XCTAssertEqual(phone.device.pending.map(\.after), [37, 40])
        XCTAssertEqual(ends(try countdown(phone)), phone.clocks.read().wallMs + 40_000)
        XCTAssertTrue(phone.device.awake)
    }

    func testAClockThatIsSetEndsNoRestEarly() async throws {
        let phone = try await resting()
        phone.clocks.turnWall(3600)
        phone.presenter.clocksChanged()
        await phone.settle()
        XCTAssertEqual(phone.device.pending.map(\.after), [57, 60])
        XCTAssertEqual(ends(try countdown(phone)), phone.clocks.read().wallMs + 60_000)
        phone.clocks.turnWall(-7200)
        phone.presenter.clocksChanged()
        await phone.settle()
        XCTAssertEqual(phone.device.pending.map(\.after), [57, 60])
        XCTAssertEqual(ends(try countdown(phone)), phone.clocks.read().wallMs + 60_000)
    }

    func testLeavingHandsAReadingOverAndGivesTheFileUp() async throws {
        let phone = try await resting()
        phone.device.asked = []
        phone.clocks.pass(5)
        await phone.leave()
        XCTAssertEqual(phone.device.pending.map(\.after), [52, 55], "set anew by the last reading")
        XCTAssertNil(phone.device.lookIn)
        // Given up indeed: another engine can have it.
        try Engine.open(path: phone.path, locale: "en-GB").shutDown()
        phone.clocks.pass(5)
        await phone.start()
        XCTAssertEqual(phone.device.pending.map(\.after), [47, 50])
        XCTAssertEqual(phone.device.lookIn, 50_000)
        XCTAssertTrue(phone.device.awake)
    }

    func testTheEndGivesTheFileUp() async throws {
        let phone = try await resting()
        let before = try await phone.floor()
        phone.presenter.ends()
        let engine = try Engine.open(path: phone.path, locale: "en-GB")
        guard
            case .floor(let floor) = try engine.view(
                look: .floor(draft: Draft()), reading: phone.clocks.read()
            ).screen
        else { return XCTFail("another screen than the floor") }
        XCTAssertEqual(floor, before)
        try engine.shutDown()
    }

    func testWithoutNotificationsItIsSaidOnceAndWorks() async throws {
        let phone = try await resting()
        phone.presenter.noticesAreOff()
        XCTAssertTrue(phone.sees("Notifications are off"), "\(phone.texts())")
        // The countdown's end does not wipe a word that waits for its answer.
        await phone.pass(60)
        XCTAssertTrue(phone.sees("Notifications are off"))
        try await phone.tap("Understood")
        phone.presenter.noticesAreOff()
        XCTAssertFalse(phone.sees("Notifications are off"))
        try await phone.tap(phone.wide)
        XCTAssertEqual(phone.device.pending.map(\.id), ["marks", "over"])
    }

    func testTheScreenStaysOnWhileASessionRuns() async throws {
        let phone = try handset()
        try await phone.begin("1.1")
        XCTAssertTrue(phone.device.awake)
        try await phone.tap("More…")
        try await phone.tap("Pause")
        XCTAssertFalse(phone.device.awake)
        try await phone.tap("Resume")
        XCTAssertTrue(phone.device.awake)
    }

    func testARunningHoldIsLookedAtWhenItsFigureMoves() async throws {
        let phone = try handset()
        let plan = """
            name = "Erg room"
            weeks = 1

            [[session]]
            name = "Evening"

            [[session.exercise]]
            name = "Plank"
            sets = 1
            seconds = "30-45 s"
            """
        await phone.dispatch(.adoptPlan(text: plan))
        await phone.start()
        phone.presenter.send(.go(.today(session: nil, minutes: nil)))
        await phone.settle()
        try await phone.tap("Begin")
        XCTAssertNil(phone.device.lookIn)
        try await phone.tap("Start the hold")
        XCTAssertEqual(phone.device.lookIn, 1000)
        await phone.pass(1)
        await phone.pass(1)
        XCTAssertTrue(phone.sees("2 s"), "\(phone.texts())")
        guard case .floor(let page) = phone.presenter.shown.page else { return XCTFail("not on the floor") }
        XCTAssertEqual(page.floor.thumb.figure?.runs, true)
        await phone.leave()
        XCTAssertNil(phone.device.lookIn, "not while nobody looks")
    }

    /// Answers every call with the same screen, and a tap with its effects.
    private final class Answering: Asked, @unchecked Sendable {
        let answer: Answer
        init(_ answer: Answer) { self.answer = answer }
        func act(action: Action, reading: Reading) throws -> Answer {
            if case .do = action { return answer }
            return Answer(look: answer.look, screen: answer.screen, effects: [], wakesAt: nil)
        }
        func suspend() throws {}
        func shutDown() throws {}
        func backUp(path: String) throws -> UInt64 { 0 }
    }

    /// Each kind of effect, in the order the core gives them. One that joins the contract stops
    /// `Presenter` from compiling.
    func testEveryEffectReachesTheDeviceInOrder() async throws {
        let phone = try handset()
        await phone.start()
        let screen = try await phone.ask(.equipment)
        let now = phone.clocks.read()
        let effects: [Effect] = [
            .haptic(kind: .recorded), .haptic(kind: .changed), .cancelRing,
            .ringAt(wallMs: now.wallMs + 9000, bootMs: nil, text: "Rest over.", next: "5 reps"),
            .keepAwake(on: true), .keepAwake(on: false),
        ]
        for speaks in [false, true] {
            let device = TestDevice()
            let said = Said(phone.settings)
            said.speaks = speaks
            let engine = Answering(
                Answer(look: .equipment, screen: screen, effects: effects, wakesAt: nil))
            let core = Core(open: { engine }, recover: { throw EngineError.Closed(reason: "") })
            let presenter = Presenter(core: core, clocks: phone.clocks, device: device, said: said)
            presenter.send(.act(.do(intent: .undo, session: nil, then: nil)))
            await withCheckedContinuation { done in core.view(.weeks, at: now) { _ in done.resume() } }
            let before: [TestDevice.Asked] = [.feel(.recorded), .feel(.changed), .withdraw]
            let after: [TestDevice.Asked] = [
                .notify(device.pending), .keepAwake(true), .keepAwake(false),
            ]
            XCTAssertEqual(device.asked, before + after)
            XCTAssertEqual(device.pending.map(\.after), [6, 9])
        }
    }

    func testWordsAreSpokenForThoseWhoAsk() async throws {
        let phone = try handset()
        try await phone.prepare()
        await phone.start()
        try await phone.tap("Go to…")
        try await phone.tap("Read this screen aloud")
        guard case .speak(let words) = phone.device.asked.last else {
            return XCTFail("\(phone.device.asked)")
        }
        XCTAssertFalse(words.isEmpty)
        try await phone.tap("Go to…")
        try await phone.tap("Speak the rest and the next set")
        XCTAssertTrue(phone.hasKey("✓ Speak the rest and the next set"))
        try await phone.die()
        await phone.start()
        try await phone.tap("Go to…")
        XCTAssertTrue(phone.hasKey("✓ Speak the rest and the next set"), "kept")
    }
}
