// A stand-in for the names of SwiftUI that the views use, for a machine that has none: they are
// type-checked against it, and a test walks what they build. What is written here is ours: it proves
// agreement with this file and not with Apple's.
@_exported import Foundation

@MainActor @preconcurrency public protocol View {
    associatedtype Body: View
    @ViewBuilder var body: Body { get }
}

extension Never: View {
    public var body: Never { fatalError("never made") }
}

/// A view of the stub's own: no body, but nodes for a test to walk.
@MainActor public protocol Bare: View where Body == Never {
    var nodes: [Node] { get }
}

extension Bare {
    public var body: Never { fatalError("walked by its nodes") }
}

/// What a test sees of a view.
@MainActor public final class Node {
    public enum Kind { case text, button, field, drawing, group }

    public let kind: Kind
    public var text: String
    public var label: String?
    public var hidden = false
    public var header = false
    public var selected = false
    public var enabled: Bool
    public var tap: (@MainActor () -> Void)?
    public var hold: (@MainActor () -> Void)?
    public var write: (@MainActor (String) -> Void)?
    public var highest: CGFloat?
    public let children: [Node]

    init(_ kind: Kind, text: String = "", children: [Node] = []) {
        self.kind = kind
        self.text = text
        self.children = children
        enabled = EnvironmentValues.now.isEnabled
    }

    /// This node and everything in it, in order.
    public var all: [Node] { [self] + children.flatMap(\.all) }

    /// Its own words, or those within it.
    public var words: String {
        text.isEmpty ? children.map(\.words).filter { !$0.isEmpty }.joined(separator: " ") : text
    }
}

/// The nodes of a view, as the environment is now.
@MainActor public func walk(_ view: some View) -> [Node] {
    if let bare = view as? any Bare { return bare.nodes }
    return walk(view.body)
}

/// A view with something changed about it.
public struct Modified<Content: View>: Bare {
    let content: Content
    var around: @MainActor (() -> [Node]) -> [Node] = { $0() }

    public var nodes: [Node] { around { walk(content) } }
}

extension View {
    func changed(_ around: @escaping @MainActor (() -> [Node]) -> [Node] = { $0() }) -> Modified<Self> {
        Modified(content: self, around: around)
    }

    func noting(_ note: @escaping @MainActor (Node) -> Void) -> Modified<Self> {
        changed { make in
            let nodes = make()
            // A note about several views is one about their group.
            let node = nodes.count == 1 ? nodes[0] : Node(.group, children: nodes)
            note(node)
            return [node]
        }
    }

    func with<Value>(
        _ key: WritableKeyPath<EnvironmentValues, Value>,
        _ value: @autoclosure @escaping @MainActor () -> Value
    ) -> Modified<Self> {
        changed { make in
            let before = EnvironmentValues.now
            EnvironmentValues.now[keyPath: key] = value()
            defer { EnvironmentValues.now = before }
            return make()
        }
    }
}

@resultBuilder @MainActor public struct ViewBuilder {
    public static func buildExpression<V: View>(_ view: V) -> V { view }
    public static func buildBlock() -> EmptyView { EmptyView() }
    public static func buildBlock<V: View>(_ view: V) -> V { view }
    public static func buildBlock<each V: View>(_ view: repeat each V) -> TupleView<(repeat each V)> {
        var makers: [@MainActor () -> [Node]] = []
        for view in repeat each view { makers.append { walk(view) } }
        return TupleView(makers: makers)
    }
    public static func buildIf<V: View>(_ view: V?) -> V? { view }
    public static func buildEither<A: View, B: View>(first: A) -> Either<A, B> { .first(first) }
    public static func buildEither<A: View, B: View>(second: B) -> Either<A, B> { .second(second) }
}

public struct EmptyView: Bare {
    public init() {}
    public var nodes: [Node] { [] }
}

public struct TupleView<T>: Bare {
    let makers: [@MainActor () -> [Node]]
    public var nodes: [Node] { makers.flatMap { $0() } }
}

extension Optional: View where Wrapped: View {
    public var body: Never { fatalError("walked by its nodes") }
}

extension Optional: Bare where Wrapped: View {
    public var nodes: [Node] { map { walk($0) } ?? [] }
}

public enum Either<A: View, B: View>: Bare {
    case first(A)
    case second(B)

    public var nodes: [Node] {
        switch self {
        case .first(let view): walk(view)
        case .second(let view): walk(view)
        }
    }
}
