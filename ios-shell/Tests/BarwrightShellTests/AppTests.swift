import Barwright
import UserNotifications
import XCTest

@testable import BarwrightApp
@testable import BarwrightPresentation

/// The glue around the presenter, against stand-ins of ours for the system's parts.
@MainActor final class AppTests: XCTestCase, @unchecked Sendable {
    private func notice(_ id: String, after: Double, keys: [NoticeKey] = [], part: String? = nil) -> Notice {
        Notice(id: id, after: after, title: id, text: "next", sound: .over, keys: keys, part: part)
    }

    private func times(_ center: UNUserNotificationCenter) -> [String: Double] {
        center.pending.compactMapValues { ($0.trigger as? UNTimeIntervalNotificationTrigger)?.timeInterval }
    }

    /// Lets what waits on the main actor be done.
    private func settle() async {
        for _ in 0..<5 { await Task.yield() }
    }

    func testARingIsHandedOverAtOnceAndAgainWhenItIsAllowed() async throws {
        let center = UNUserNotificationCenter()
        let notices = Notices(center: center)
        let keys = [NoticeKey(id: "record", label: "Racked"), NoticeKey(id: "longer", label: "+20 s")]
        notices.set([notice("marks", after: 57), notice("over", after: 60, keys: keys, part: "0.1.0")]) {
            XCTFail("denied")
        }
        // Nothing waits for an answer: the process may be stopped now.
        XCTAssertEqual(times(center), ["marks": 57, "over": 60])
        let over = try XCTUnwrap(center.pending["over"])
        XCTAssertEqual(over.content.userInfo[Notices.part] as? String, "0.1.0")
        let category = try XCTUnwrap(center.categories.first)
        XCTAssertEqual(category.identifier, "over")
        XCTAssertEqual(category.actions.map(\.identifier), ["record", "longer"])
        XCTAssertEqual(category.actions.map(\.title), ["Racked", "+20 s"])

        // The system dropped them for want of leave, and is asked again when there is.
        center.pending = [:]
        center.questions[0](true, nil)
        await settle()
        XCTAssertEqual(times(center), ["marks": 57, "over": 60])

        // From then on once is enough.
        notices.set([notice("over", after: 2)]) { XCTFail("denied") }
        XCTAssertEqual(times(center), ["over": 2], "no marks are left of the ring before")
        center.pending = [:]
        center.questions[1](true, nil)
        await settle()
        XCTAssertEqual(times(center), [:])
    }

    func testAnAnswerThatComesLateCarriesOutNoOlderWish() async {
        let center = UNUserNotificationCenter()
        let notices = Notices(center: center)
        notices.set([notice("over", after: 60)]) { XCTFail("denied") }
        notices.withdraw()
        XCTAssertEqual(times(center), [:])
        for allowed in [true, false] { center.questions[0](allowed, nil) }
        await settle()
        XCTAssertEqual(times(center), [:])
    }

    func testThatNoneAreShownIsToldOn() async {
        let center = UNUserNotificationCenter()
        var denied = 0
        Notices(center: center).set([notice("over", after: 60)]) { denied += 1 }
        center.questions[0](false, nil)
        await settle()
        XCTAssertEqual(denied, 1)
    }

    func testTheWholeProgramRunsFromItsStartToItsEnd() async throws {
        let delegate = AppDelegate()
        XCTAssertTrue(delegate.application(.shared, didFinishLaunchingWithOptions: nil))
        XCTAssertTrue(UNUserNotificationCenter.current().delegate === delegate)
        let host = delegate.host
        host.turned(.active)
        for _ in 0..<200 where host.shown.page == nil { try await Task.sleep(for: .milliseconds(10)) }
        XCTAssertNotNil(host.shown.page)
        XCTAssertNil(host.shown.word, host.shown.word?.text ?? "")

        // A notification of a session that is not there records nothing, and is answered.
        let content = UNMutableNotificationContent()
        content.userInfo = [Notices.part: "0.0.0"]
        let request = UNNotificationRequest(identifier: "over", content: content, trigger: nil)
        let answered = expectation(description: "answered")
        delegate.userNotificationCenter(
            .current(),
            didReceive: UNNotificationResponse(
                actionIdentifier: "record", notification: UNNotification(request: request))
        ) { answered.fulfill() }
        await fulfillment(of: [answered], timeout: 5)

        // What the system opens over the window.
        host.presenter.send(.pick(.gym))
        XCTAssertTrue(host.picks)
        struct Gone: Error {}
        host.chosen(.failure(Gone()))
        XCTAssertEqual(host.shown.word?.text, Words.unreadableFile)
        host.presenter.send(.understood)
        host.presenter.send(.copy)
        for _ in 0..<200 where host.shares == nil { try await Task.sleep(for: .milliseconds(10)) }
        let copy = try XCTUnwrap(host.shares)
        XCTAssertTrue(FileManager.default.fileExists(atPath: copy.url.path))
        host.turned(.background)
        delegate.applicationWillTerminate(.shared)
    }
}
