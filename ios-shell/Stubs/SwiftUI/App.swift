import UniformTypeIdentifiers

@MainActor @preconcurrency public protocol App {
    associatedtype Body: Scene
    var body: Body { get }
    init()
}

extension App { public static func main() {} }

@MainActor @preconcurrency public protocol Scene {}

public struct WindowGroup: Scene {
    public init(@ViewBuilder content: () -> some View) {}
}

extension View {
    public func onChange<Value: Equatable>(
        of value: Value, initial: Bool = false, _ action: @escaping @MainActor (Value, Value) -> Void
    ) -> some View { changed() }
    public func onOpenURL(perform action: @escaping @MainActor (URL) -> Void) -> some View { changed() }
    public func fileImporter(
        isPresented: Binding<Bool>, allowedContentTypes: [UTType],
        onCompletion: @escaping @MainActor (Result<URL, any Error>) -> Void
    ) -> some View { changed() }
    public func sheet<Item: Identifiable>(
        item: Binding<Item?>, onDismiss: (@MainActor () -> Void)? = nil,
        @ViewBuilder content: @escaping @MainActor (Item) -> some View
    ) -> some View { changed() }
}
