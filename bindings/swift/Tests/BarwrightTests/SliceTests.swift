import Barwright
import XCTest

/// The thin slice: open, look, tap, refusal, shut down.
final class SliceTests: XCTestCase {
    func testOneTapOneLookOneRefusal() throws {
        let path = try freshFolder().appendingPathComponent("log.db").path
        let engine = try Engine.open(path: path, locale: "en-GB")

        guard case .today(let today) = try engine.view(
            look: .today(session: nil, minutes: nil), reading: reading())
        else { return XCTFail("another screen than Today") }
        XCTAssertFalse(today.title.isEmpty)

        let update = try engine.dispatch(
            intent: .chooseGym(name: "Home"), reading: reading(after: 1000))
        guard case .equipment = update.screen else { return XCTFail("\(update.screen)") }
    }
}
