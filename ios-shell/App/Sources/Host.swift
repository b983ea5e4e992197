import BarwrightPresentation
import Foundation
import SwiftUI
import UIKit

/// A file that is offered to someone.
struct SharedFile: Identifiable {
    let url: URL

    var id: URL { url }
}

/// Holds the one presenter, and hands what it shows to SwiftUI.
@MainActor
final class Host: ObservableObject {
    @Published private(set) var shown: Shown
    /// The system's file chooser is open.
    @Published var picks = false
    /// The file that is offered.
    @Published var shares: SharedFile?

    let presenter: Presenter
    private let phone = Phone()
    private var kind = FileKind.plan

    init() {
        // The lifter's own language and region.
        let tag: @Sendable () -> String = {
            Locale.preferredLanguages.first ?? Locale.current.identifier(.bcp47)
        }
        let core = Core(locale: tag) {
            let support = try FileManager.default.url(
                for: .applicationSupportDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
            return try Store.path(in: support)
        }
        presenter = Presenter(core: core, clocks: DeviceClocks(), device: phone, said: Said())
        shown = presenter.shown
        presenter.onChange = { [weak self] shown in self?.shown = shown }
        phone.onLook = { [weak self] in self?.presenter.lookAgain() }
        phone.onNoticesOff = { [weak self] in self?.presenter.noticesAreOff() }
        phone.onShare = { [weak self] url in self?.shares = SharedFile(url: url) }
        phone.onPick = { [weak self] kind in
            self?.kind = kind
            self?.picks = true
        }
    }

    /// The scene came to the front or left it.
    func turned(_ phase: ScenePhase) {
        switch phase {
        case .active: presenter.comesToFront()
        case .background:
            // Some seconds are ours to finish in.
            let application = UIApplication.shared
            let task = application.beginBackgroundTask(expirationHandler: nil)
            presenter.leaves { application.endBackgroundTask(task) }
        case .inactive: break
        @unknown default: break
        }
    }

    /// A file came from another app.
    func opened(_ url: URL, as kind: FileKind) {
        presenter.picked(kind, read(url))
    }

    /// A file was chosen.
    func chosen(_ result: Result<URL, any Error>) {
        switch result {
        case .success(let url): opened(url, as: kind)
        case .failure: presenter.picked(kind, nil)
        }
    }

    private func read(_ url: URL) -> Data? {
        let scoped = url.startAccessingSecurityScopedResource()
        defer { if scoped { url.stopAccessingSecurityScopedResource() } }
        return try? Data(contentsOf: url, options: .mappedIfSafe)
    }
}
