// A stand-in for the names of UserNotifications that the app uses; see Stubs/SwiftUI.
import Foundation

/// Holds what was asked of it, for a test.
public final class UNUserNotificationCenter {
    private static let one = UNUserNotificationCenter()

    // Not Apple's: what a test looks at, and how it answers.
    public var pending: [String: UNNotificationRequest] = [:]
    public var categories: Set<UNNotificationCategory> = []
    public var delivered = 0
    public var questions: [@Sendable (Bool, (any Error)?) -> Void] = []
    public init() {}

    public static func current() -> UNUserNotificationCenter { one }
    public weak var delegate: (any UNUserNotificationCenterDelegate)?
    public func requestAuthorization(
        options: UNAuthorizationOptions, completionHandler: @escaping @Sendable (Bool, (any Error)?) -> Void
    ) { questions.append(completionHandler) }
    public func removeAllPendingNotificationRequests() { pending = [:] }
    public func removePendingNotificationRequests(withIdentifiers names: [String]) {
        for name in names { pending[name] = nil }
    }
    public func removeAllDeliveredNotifications() { delivered = 0 }
    public func setNotificationCategories(_ categories: Set<UNNotificationCategory>) {
        self.categories = categories
    }
    public func add(
        _ request: UNNotificationRequest, withCompletionHandler: (@Sendable ((any Error)?) -> Void)?
    ) { pending[request.identifier] = request }
}

public struct UNAuthorizationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let alert = Self(rawValue: 1)
    public static let sound = Self(rawValue: 2)
}

public struct UNNotificationPresentationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let sound = Self(rawValue: 1)
}

public protocol UNUserNotificationCenterDelegate: AnyObject {
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification,
        withCompletionHandler completionHandler: @escaping (UNNotificationPresentationOptions) -> Void
    )
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, didReceive response: UNNotificationResponse,
        withCompletionHandler completionHandler: @escaping () -> Void
    )
}

public let UNNotificationDefaultActionIdentifier = "default"
public let UNNotificationDismissActionIdentifier = "dismiss"

public class UNNotificationContent {
    public fileprivate(set) var userInfo: [AnyHashable: Any] = [:]
}
public final class UNMutableNotificationContent: UNNotificationContent {
    public override init() {}
    public var title = ""
    public var body = ""
    public var sound: UNNotificationSound?
    public var interruptionLevel = UNNotificationInterruptionLevel.active
    public var threadIdentifier = ""
    public var categoryIdentifier = ""
    public override var userInfo: [AnyHashable: Any] {
        get { super.userInfo }
        set { super.userInfo = newValue }
    }
}
public enum UNNotificationInterruptionLevel: Sendable { case passive, active, timeSensitive }
public struct UNNotificationSoundName: Sendable { public init(_ name: String) {} }
public final class UNNotificationSound { public init(named: UNNotificationSoundName) {} }
public class UNNotificationTrigger {}
public final class UNTimeIntervalNotificationTrigger: UNNotificationTrigger {
    public let timeInterval: TimeInterval
    public init(timeInterval: TimeInterval, repeats: Bool) {
        // Apple's ends the process at this.
        precondition(timeInterval > 0)
        self.timeInterval = timeInterval
    }
}
public final class UNNotificationRequest {
    public let identifier: String
    public let content: UNNotificationContent
    public let trigger: UNNotificationTrigger?
    public init(identifier: String, content: UNNotificationContent, trigger: UNNotificationTrigger?) {
        self.identifier = identifier
        self.content = content
        self.trigger = trigger
    }
}
public final class UNNotification {
    public let request: UNNotificationRequest
    public init(request: UNNotificationRequest) { self.request = request }
}
public final class UNNotificationResponse {
    public let actionIdentifier: String
    public let notification: UNNotification
    public init(actionIdentifier: String, notification: UNNotification) {
        self.actionIdentifier = actionIdentifier
        self.notification = notification
    }
}
public struct UNNotificationActionOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
}
public struct UNNotificationCategoryOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
}
public final class UNNotificationAction {
    public let identifier: String
    public let title: String
    public init(identifier: String, title: String, options: UNNotificationActionOptions) {
        self.identifier = identifier
        self.title = title
    }
}
public final class UNNotificationCategory: NSObject {
    public let identifier: String
    public let actions: [UNNotificationAction]
    public init(
        identifier: String, actions: [UNNotificationAction], intentIdentifiers: [String],
        options: UNNotificationCategoryOptions
    ) {
        self.identifier = identifier
        self.actions = actions
    }
}
