public struct Text: Bare {
    let words: String

    public init(_ words: String) { self.words = words }
    public init(
        timerInterval: ClosedRange<Date>, pauseTime: Date? = nil, countsDown: Bool = true,
        showsHours: Bool = true
    ) {
        words = countsDown ? "⏳" : "⏱"
    }

    public var nodes: [Node] { words.isEmpty ? [] : [Node(.text, text: words)] }

    public func font(_ font: Font?) -> Text { self }
    public func foregroundStyle(_ color: Color) -> Text { self }
}

public struct VStack<Content: View>: Bare {
    let content: Content
    public init(
        alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content
    ) {
        self.content = content()
    }
    public var nodes: [Node] { [Node(.group, children: walk(content))] }
}

public struct HStack<Content: View>: Bare {
    let content: Content
    public init(
        alignment: VerticalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content
    ) {
        self.content = content()
    }
    public var nodes: [Node] { [Node(.group, children: walk(content))] }
}

public struct ScrollView<Content: View>: Bare {
    let content: Content
    public init(_ axes: Axis.Set = .vertical, @ViewBuilder content: () -> Content) {
        self.content = content()
    }
    public var nodes: [Node] { [Node(.group, children: walk(content))] }
}

public struct LazyVGrid<Content: View>: Bare {
    let content: Content
    public init(columns: [GridItem], spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) {
        self.content = content()
    }
    public var nodes: [Node] { [Node(.group, children: walk(content))] }
}

public struct GridItem: Sendable {
    public enum Size: Sendable {
        case flexible(minimum: CGFloat = 10, maximum: CGFloat = .infinity)
        case adaptive(minimum: CGFloat, maximum: CGFloat = .infinity)
    }
    public init(_ size: Size = .flexible(), spacing: CGFloat? = nil) {}
}

/// What fits is not known here: the first is walked.
public struct ViewThatFits<Content: View>: Bare {
    let content: Content
    public init(in axes: Axis.Set = .vertical, @ViewBuilder content: () -> Content) {
        self.content = content()
    }
    public var nodes: [Node] { Array(walk(content).prefix(1)) }
}

public struct ForEach<Data: RandomAccessCollection, ID: Hashable, Content: View>: Bare {
    let data: Data
    let id: KeyPath<Data.Element, ID>
    let content: @MainActor (Data.Element) -> Content

    public init(
        _ data: Data, id: KeyPath<Data.Element, ID>,
        @ViewBuilder content: @escaping @MainActor (Data.Element) -> Content
    ) {
        self.data = data
        self.id = id
        self.content = content
    }

    public var nodes: [Node] {
        // SwiftUI loses views whose names are the same.
        precondition(Set(data.map { $0[keyPath: id] }).count == data.count, "two of a name: \(data)")
        return data.flatMap { walk(content($0)) }
    }
}

extension ForEach where Data.Element: Identifiable, ID == Data.Element.ID {
    public init(_ data: Data, @ViewBuilder content: @escaping @MainActor (Data.Element) -> Content) {
        self.init(data, id: \.id, content: content)
    }
}

public struct Button<Label: View>: Bare {
    let action: @MainActor () -> Void
    let label: Label

    public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {
        self.action = action
        self.label = label()
    }

    public var nodes: [Node] {
        let node = Node(.button, children: walk(label))
        node.tap = action
        return [node]
    }
}

public struct TextField: Bare {
    let hint: String
    let text: Binding<String>

    public init(_ hint: String, text: Binding<String>) {
        self.hint = hint
        self.text = text
    }

    public var nodes: [Node] {
        let node = Node(.field, text: text.wrappedValue)
        let text = text
        node.write = { text.wrappedValue = $0 }
        return [node]
    }
}

/// Open, as after a tap on its label.
public struct DisclosureGroup<Label: View, Content: View>: Bare {
    let label: Label
    let content: Content

    public init(@ViewBuilder content: () -> Content, @ViewBuilder label: () -> Label) {
        self.content = content()
        self.label = label()
    }

    public var nodes: [Node] { [Node(.group, children: walk(label) + walk(content))] }
}

public protocol Shape: View {}

public struct Rectangle: Shape, Bare {
    public init() {}
    public var nodes: [Node] { [] }
}

public struct Spacer: Bare {
    public init() {}
    public var nodes: [Node] { [] }
}

public struct RoundedRectangle: Shape, Bare {
    public init(cornerRadius: CGFloat) {}
    public var nodes: [Node] { [] }
}

extension Shape {
    public func fill(_ color: Color) -> some View { changed() }
    public func stroke(_ color: Color, lineWidth: CGFloat = 1) -> some View { changed() }
}

public struct Color: Hashable, Sendable {
    public enum RGBColorSpace: Sendable { case sRGB }
    let parts: [Double]
    public init(_ space: RGBColorSpace = .sRGB, red: Double, green: Double, blue: Double, opacity: Double = 1)
    {
        parts = [red, green, blue, opacity]
    }
}

extension Color: Bare {
    public var nodes: [Node] { [] }
}

/// Painted once, on a sheet of a telephone's width.
public struct Canvas: Bare {
    let renderer: @MainActor (inout GraphicsContext, CGSize) -> Void

    public init(renderer: @escaping @MainActor (inout GraphicsContext, CGSize) -> Void) {
        self.renderer = renderer
    }

    public var nodes: [Node] {
        var context = GraphicsContext()
        renderer(&context, CGSize(width: 360, height: 120))
        let node = Node(.drawing, text: context.paper.words.joined(separator: " "))
        return [node]
    }
}

@MainActor public struct GraphicsContext {
    final class Paper { var words: [String] = [] }
    public struct Shading { public static func color(_ color: Color) -> Shading { Shading() } }
    let paper = Paper()

    public func fill(_ path: Path, with shading: Shading) {}
    public func stroke(_ path: Path, with shading: Shading, lineWidth: CGFloat = 1) {}
    public func draw(_ text: Text, at point: CGPoint, anchor: UnitPoint = .center) {
        paper.words.append(text.words)
    }
    public mutating func translateBy(x: CGFloat, y: CGFloat) {}
    public mutating func rotate(by angle: Angle) {}
}

public struct UnitPoint: Sendable {
    public static let leading = UnitPoint()
    public static let center = UnitPoint()
    public static let trailing = UnitPoint()
}

public struct Angle { public static func degrees(_ degrees: Double) -> Angle { Angle() } }

public struct Path {
    public init(roundedRect: CGRect, cornerRadius: CGFloat) {}
    public init(_ build: (inout Path) -> Void) {
        self.init(roundedRect: .zero, cornerRadius: 0)
        build(&self)
    }
    public mutating func addLines(_ points: [CGPoint]) {}
}

public struct Font: Sendable {
    public enum Weight: Sendable { case regular, bold }
    public enum TextStyle: Sendable { case body, title2, largeTitle }
    public static let body = Font()
    public static let title2 = Font()
    public static func system(size: CGFloat, weight: Weight? = nil) -> Font { Font() }
    public func bold() -> Font { self }
    public func monospaced() -> Font { self }
    public func monospacedDigit() -> Font { self }
}

public enum HorizontalAlignment { case leading, center, trailing }
public enum VerticalAlignment { case top, center, bottom }
public enum TextAlignment { case leading, center, trailing }
public struct Alignment: Sendable {
    public static let center = Alignment()
    public static let leading = Alignment()
    public static let top = Alignment()
    public static let trailing = Alignment()
    public static let topTrailing = Alignment()
}
public enum Axis {
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int
        public init(rawValue: Int) { self.rawValue = rawValue }
        public static let horizontal = Set(rawValue: 1)
        public static let vertical = Set(rawValue: 2)
    }
}
public enum Edge {
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int
        public init(rawValue: Int) { self.rawValue = rawValue }
        public static let leading = Set(rawValue: 1)
        public static let horizontal = Set(rawValue: 2)
        public static let vertical = Set(rawValue: 4)
        public static let bottom = Set(rawValue: 8)
        public static let all = Set(rawValue: 15)
    }
}
public struct Animation: Sendable, Equatable {
    public static func easeOut(duration: TimeInterval) -> Animation { Animation() }
}
public struct AnyTransition { public static var opacity: AnyTransition { AnyTransition() } }
