import Barwright
import XCTest

/// The way of one set, its fields read by hand: JSON that goes in and comes out the same would not
/// notice two swapped.
final class SliceTests: XCTestCase {
    func testOneSetFromALookToItsRest() throws {
        let engine = try engineWithPlan()
        guard case .today(let today) = try engine.view(
            look: .today(session: nil, minutes: nil), reading: reading()).screen
        else { return XCTFail("another screen than Today") }
        XCTAssertEqual(today.title, "Legs")
        XCTAssertEqual(Set(today.rows.map(\.depth)), [1, 2])
        let key = try XCTUnwrap(today.keys.first(where: \.enabled))
        guard case .do(let intent, nil, nil) = key.action, case .begin = intent else {
            return XCTFail("\(key.action)")
        }

        let begun = try engine.act(action: key.action, reading: reading(after: 10_000))
        XCTAssertEqual(begun.look, floor)
        XCTAssertNil(begun.wakesAt)
        XCTAssertEqual(begun.effects, [.keepAwake(on: true)])
        guard case .floor(let first) = begun.screen else { return XCTFail("\(begun.screen)") }
        XCTAssertEqual(first.part, "0.0.0@2")
        XCTAssertEqual(first.bar.total, "100 kg")
        XCTAssertEqual(first.call.exercise, "Back squat")
        XCTAssertTrue(first.bar.drawn)
        XCTAssertFalse(first.bar.plates.isEmpty)
        XCTAssertNil(first.rest)

        let tap = record(first.part, amount: 5, leftHalves: 3)
        let done = try engine.dispatch(intent: tap, reading: reading(after: 60_000))
        XCTAssertEqual(done.effects.first, .haptic(kind: .recorded))
        guard case .ringAt(let wallMs, let bootMs, _, _) = done.effects[1] else {
            return XCTFail("\(done.effects)")
        }
        XCTAssertEqual(wallMs, reading(after: 240_000).wallMs)
        XCTAssertEqual(bootMs, reading(after: 240_000).bootMs)
        guard case .floor(let resting) = done.screen else { return XCTFail("\(done.screen)") }
        XCTAssertEqual(done.wakesAt, reading(after: 61_000).wallMs)
        // A key knows its session, and what is shown after it.
        guard case .do(let longer, 2, floor) = resting.rest?.longer.action else {
            return XCTFail("\(String(describing: resting.rest))")
        }
        let another = Action.do(intent: longer, session: 1, then: nil)
        let past = refusal { _ = try engine.act(action: another, reading: reading(after: 61_000)) }
        XCTAssertEqual(past, .stale)
        XCTAssertEqual(resting.rest?.leftMs, 180_000)
        XCTAssertEqual(resting.rest?.text, "3:00")

        let late = refusal { _ = try engine.dispatch(intent: tap, reading: reading(after: 61_000)) }
        XCTAssertEqual(late, .stale)

        // A draft left at its defaults is the floor as it stands.
        let later = try engine.view(look: floor, reading: reading(after: 61_000))
        guard case .floor(let seen) = later.screen
        else { return XCTFail("another screen than the floor") }
        XCTAssertEqual(seen.part, "0.1.0@2")
        XCTAssertEqual(seen.rest?.leftMs, 179_000)
        XCTAssertNotNil(seen.thumb.undo)
        try engine.shutDown()
    }

    func testVersionsAreTold() throws {
        let versions = try Engine.inMemory(locale: "en-GB").versions()
        XCTAssertFalse(versions.program.isEmpty)
        XCTAssertGreaterThanOrEqual(versions.contract, 1)
        XCTAssertGreaterThanOrEqual(versions.store, 1)
    }
}
