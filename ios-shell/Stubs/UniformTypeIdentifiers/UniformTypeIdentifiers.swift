// A stand-in for the names of UniformTypeIdentifiers that the app uses; see Stubs/SwiftUI.
public struct UTType: Hashable, Sendable {
    let name: String
    public static let text = UTType(name: "public.text")
    public static let data = UTType(name: "public.data")
}
