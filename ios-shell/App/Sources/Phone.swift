import AVFAudio
import BarwrightPresentation
import Foundation
import UIKit

/// Carries out what the presentation asks of the device.
@MainActor
final class Phone: Device {
    var onLook: (() -> Void)?
    var onNoticesOff: (() -> Void)?
    var onShare: ((URL) -> Void)?
    var onPick: ((FileKind) -> Void)?

    private let notices = Notices()
    private let voice = AVSpeechSynthesizer()
    private var look: DispatchWorkItem?

    func notify(_ wanted: [Notice]) {
        notices.set(wanted) { [weak self] in self?.onNoticesOff?() }
    }

    func withdrawNotices() {
        notices.withdraw()
    }

    func feel(_ mark: Felt) {
        switch mark {
        case .recorded: UIImpactFeedbackGenerator(style: .medium).impactOccurred()
        case .changed: UINotificationFeedbackGenerator().notificationOccurred(.warning)
        case .over: UINotificationFeedbackGenerator().notificationOccurred(.success)
        }
    }

    func announce(_ words: String) {
        UIAccessibility.post(notification: .announcement, argument: words)
    }

    func speak(_ words: String) {
        voice.stopSpeaking(at: .immediate)
        voice.speak(AVSpeechUtterance(string: words))
    }

    func keepAwake(_ on: Bool) {
        UIApplication.shared.isIdleTimerDisabled = on
    }

    func share(path: String, mediaType: String) {
        // The system takes a file's kind from its name.
        onShare?(URL(fileURLWithPath: path))
    }

    func pick(_ kind: FileKind) {
        onPick?(kind)
    }

    func lookAgain(after milliseconds: Int64?) {
        look?.cancel()
        look = nil
        guard let milliseconds else { return }
        let item = DispatchWorkItem { [weak self] in self?.onLook?() }
        look = item
        DispatchQueue.main.asyncAfter(deadline: .now() + .milliseconds(Int(milliseconds)), execute: item)
    }
}
