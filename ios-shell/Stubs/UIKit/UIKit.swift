// A stand-in for the few names of UIKit that the app uses; see Stubs/SwiftUI.
@_exported import Foundation
import SwiftUI

@MainActor public final class UIApplication {
    public struct LaunchOptionsKey: Hashable, Sendable {}
    public static let shared = UIApplication()
    public nonisolated static let significantTimeChangeNotification = Notification.Name("significant time")
    public var isIdleTimerDisabled = false
    public func beginBackgroundTask(expirationHandler: (@MainActor @Sendable () -> Void)?)
        -> UIBackgroundTaskIdentifier
    {
        UIBackgroundTaskIdentifier()
    }
    public func endBackgroundTask(_ task: UIBackgroundTaskIdentifier) {}
}

public struct UIBackgroundTaskIdentifier: Hashable, Sendable {}

@MainActor public protocol UIApplicationDelegate: NSObject {
    init()
    func application(
        _ application: UIApplication,
        didFinishLaunchingWithOptions options: [UIApplication.LaunchOptionsKey: Any]?
    ) -> Bool
    func applicationWillTerminate(_ application: UIApplication)
}

@MainActor @propertyWrapper public struct UIApplicationDelegateAdaptor<Delegate: UIApplicationDelegate> {
    public let wrappedValue: Delegate
    public init(_ type: Delegate.Type = Delegate.self) { wrappedValue = Delegate() }
}

@MainActor public final class UIImpactFeedbackGenerator {
    public enum FeedbackStyle { case light, medium, heavy }
    public init(style: FeedbackStyle) {}
    public func impactOccurred() {}
}

@MainActor public final class UINotificationFeedbackGenerator {
    public enum FeedbackType { case success, warning, error }
    public init() {}
    public func notificationOccurred(_ type: FeedbackType) {}
}

@MainActor public enum UIAccessibility {
    public struct Notification: Sendable { public static let announcement = Notification() }
    public static func post(notification: Notification, argument: Any?) {}
}

@MainActor open class UIViewController {}
@MainActor open class UIActivity {}
@MainActor public final class UIActivityViewController: UIViewController {
    public init(activityItems: [Any], applicationActivities: [UIActivity]?) {}
}

@MainActor @preconcurrency public protocol UIViewControllerRepresentable: Bare {
    associatedtype UIViewControllerType: UIViewController
    typealias Context = UIViewControllerRepresentableContext
    func makeUIViewController(context: Context) -> UIViewControllerType
    func updateUIViewController(_ controller: UIViewControllerType, context: Context)
}
public struct UIViewControllerRepresentableContext {}
extension UIViewControllerRepresentable { public var nodes: [Node] { [] } }

// Apple's Foundation has these; this one does not.
extension Notification.Name {
    public static let NSSystemClockDidChange = Notification.Name("the clock was set")
}

extension URL {
    public func startAccessingSecurityScopedResource() -> Bool { true }
    public func stopAccessingSecurityScopedResource() {}
}
