import BarwrightPresentation
import BarwrightViews
import SwiftUI
import UIKit
import UniformTypeIdentifiers

/// The program: one window over one presenter.
@main
struct BarwrightApp: App {
    @UIApplicationDelegateAdaptor(AppDelegate.self) private var delegate

    var body: some Scene {
        WindowGroup { WindowView(host: delegate.host) }
    }
}

/// What is shown, and what the system is to open over it.
struct WindowView: View {
    @ObservedObject var host: Host
    @Environment(\.scenePhase) private var phase

    var body: some View {
        RootView(shown: host.shown, send: host.presenter.send)
            .onChange(of: phase, initial: true) { _, now in host.turned(now) }
            .onOpenURL { url in host.opened(url, as: .plan) }
            .fileImporter(isPresented: $host.picks, allowedContentTypes: [.text, .data]) { result in
                host.chosen(result)
            }
            .sheet(item: $host.shares) { file in ShareSheet(file: file) }
    }
}

/// The system's own sheet for handing a file to someone.
struct ShareSheet: UIViewControllerRepresentable {
    let file: SharedFile

    func makeUIViewController(context: Context) -> UIActivityViewController {
        UIActivityViewController(activityItems: [file.url], applicationActivities: nil)
    }

    func updateUIViewController(_ controller: UIActivityViewController, context: Context) {}
}
