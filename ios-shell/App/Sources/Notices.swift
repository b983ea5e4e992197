import BarwrightPresentation
import Foundation
@preconcurrency import UserNotifications

/// The rest's notifications: the system keeps and rings them, whatever becomes of the process.
@MainActor
final class Notices {
    /// Where a notification says for which part its keys were made.
    nonisolated static let part = "part"

    private let center: UNUserNotificationCenter
    /// The last wish: an answer about permission that comes late carries out no older one.
    private var wish = 0
    /// The lifter allowed notifications.
    private var allowed = false

    init(center: UNUserNotificationCenter = .current()) {
        self.center = center
    }

    /// These and no others. `denied` is called when the device shows none.
    ///
    /// They are handed over at once, each in the place of the one of its name: the process may be
    /// stopped before the answer about permission comes, and the ring of a rest must not fall
    /// between.
    func set(_ notices: [Notice], denied: @escaping @MainActor @Sendable () -> Void) {
        wish += 1
        let mine = wish
        let gone = Set([Notice.marks, Notice.over]).subtracting(notices.map(\.id))
        center.removePendingNotificationRequests(withIdentifiers: Array(gone))
        center.removeAllDeliveredNotifications()
        add(notices, late: 0)
        let asked = ContinuousClock.now
        // The system asks the lifter at the first rest and never again. It answers on a queue of its
        // own.
        center.requestAuthorization(options: [.alert, .sound]) { @Sendable allowed, _ in
            Task { @MainActor in
                guard mine == self.wish else { return }
                guard allowed else { return denied() }
                // What was handed over before it was allowed is handed over again.
                if !self.allowed {
                    self.add(notices, late: Double(asked.duration(to: .now).components.seconds))
                }
                self.allowed = true
            }
        }
    }

    func withdraw() {
        wish += 1
        center.removeAllPendingNotificationRequests()
        center.removeAllDeliveredNotifications()
    }

    /// `late`: whole seconds that the question took.
    private func add(_ notices: [Notice], late: Double) {
        try? sounds()
        for notice in notices where notice.after > late {
            let content = UNMutableNotificationContent()
            content.title = notice.title
            content.body = notice.text
            content.sound = UNNotificationSound(named: UNNotificationSoundName(notice.sound.file))
            content.interruptionLevel = .timeSensitive
            content.threadIdentifier = "rest"
            if let part = notice.part { content.userInfo = [Self.part: part] }
            if !notice.keys.isEmpty {
                content.categoryIdentifier = notice.id
                center.setNotificationCategories([category(notice)])
            }
            let trigger = UNTimeIntervalNotificationTrigger(
                timeInterval: notice.after - late, repeats: false)
            center.add(
                UNNotificationRequest(identifier: notice.id, content: content, trigger: trigger),
                withCompletionHandler: nil)
        }
    }

    private func category(_ notice: Notice) -> UNNotificationCategory {
        UNNotificationCategory(
            identifier: notice.id,
            actions: notice.keys.map {
                UNNotificationAction(identifier: $0.id, title: $0.label, options: [])
            },
            intentIdentifiers: [], options: [])
    }

    private func sounds() throws {
        let library = try FileManager.default.url(
            for: .libraryDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
        try Sound.write(to: library)
    }
}
