// A stand-in for the names of UserNotifications that the app uses; see Stubs/SwiftUI.
import Foundation

public final class UNUserNotificationCenter {
    public static func current() -> UNUserNotificationCenter { UNUserNotificationCenter() }
    public weak var delegate: (any UNUserNotificationCenterDelegate)?
    public func requestAuthorization(
        options: UNAuthorizationOptions, completionHandler: @escaping @Sendable (Bool, (any Error)?) -> Void
    ) {}
    public func removeAllPendingNotificationRequests() {}
    public func removeAllDeliveredNotifications() {}
    public func setNotificationCategories(_ categories: Set<UNNotificationCategory>) {}
    public func add(
        _ request: UNNotificationRequest, withCompletionHandler: (@Sendable ((any Error)?) -> Void)?
    ) {}
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
    public init(timeInterval: TimeInterval, repeats: Bool) {}
}
public final class UNNotificationRequest {
    public let content: UNNotificationContent
    public init(identifier: String, content: UNNotificationContent, trigger: UNNotificationTrigger?) {
        self.content = content
    }
}
public final class UNNotification {
    public let request: UNNotificationRequest
    init(request: UNNotificationRequest) { self.request = request }
}
public final class UNNotificationResponse {
    public let actionIdentifier: String
    public let notification: UNNotification
    init(actionIdentifier: String, notification: UNNotification) {
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
    public init(identifier: String, title: String, options: UNNotificationActionOptions) {}
}
public final class UNNotificationCategory: NSObject {
    public init(
        identifier: String, actions: [UNNotificationAction], intentIdentifiers: [String],
        options: UNNotificationCategoryOptions
    ) {}
}
