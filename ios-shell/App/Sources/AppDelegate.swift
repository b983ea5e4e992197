import BarwrightPresentation
import Foundation
import UIKit
import UserNotifications

/// What the system tells the process: its end, its clocks, taps on notifications.
@MainActor
final class AppDelegate: NSObject, UIApplicationDelegate {
    let host = Host()
    private var watches: [any NSObjectProtocol] = []

    func application(
        _ application: UIApplication,
        didFinishLaunchingWithOptions options: [UIApplication.LaunchOptionsKey: Any]? = nil
    ) -> Bool {
        UNUserNotificationCenter.current().delegate = self
        // The clock was set, or the time zone changed.
        watch(UIApplication.significantTimeChangeNotification) { $0.presenter.clocksChanged() }
        watch(.NSSystemClockDidChange) { $0.presenter.clocksChanged() }
        watch(.NSSystemTimeZoneDidChange) { $0.presenter.clocksChanged() }
        watch(NSLocale.currentLocaleDidChangeNotification) { $0.presenter.regionChanged() }
        return true
    }

    func applicationWillTerminate(_ application: UIApplication) {
        host.presenter.ends()
    }

    private func watch(_ name: Notification.Name, _ then: @escaping @MainActor @Sendable (Host) -> Void) {
        let host = host
        let watch = NotificationCenter.default.addObserver(forName: name, object: nil, queue: .main) { _ in
            MainActor.assumeIsolated { then(host) }
        }
        watches.append(watch)
    }
}

extension AppDelegate: UNUserNotificationCenterDelegate {
    /// The program is in front: the marks are heard all the same, the screen says the rest.
    nonisolated func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification,
        withCompletionHandler done: @escaping (UNNotificationPresentationOptions) -> Void
    ) {
        done(.sound)
    }

    /// A key of a notification records; a tap on the notification itself opens the program.
    nonisolated func userNotificationCenter(
        _ center: UNUserNotificationCenter, didReceive response: UNNotificationResponse,
        withCompletionHandler done: @escaping () -> Void
    ) {
        let key = response.actionIdentifier
        let part = response.notification.request.content.userInfo[Notices.part] as? String
        guard key != UNNotificationDefaultActionIdentifier, key != UNNotificationDismissActionIdentifier
        else { return done() }
        let done = Done(call: done)
        Task { @MainActor in
            host.presenter.noticeTapped(key: key, part: part) { done.call() }
        }
    }
}

/// What the system waits for; it is called on the main thread, as the system asks.
private struct Done: @unchecked Sendable {
    let call: () -> Void
}
