@MainActor @preconcurrency public protocol ButtonStyle {
    associatedtype Body: View
    typealias Configuration = ButtonStyleConfiguration
    @ViewBuilder func makeBody(configuration: Configuration) -> Body
}

public struct ButtonStyleConfiguration {
    public struct Label: Bare { public var nodes: [Node] { [] } }
    @MainActor public var label: Label { Label() }
    public let isPressed = false
}

public struct RoundedBorderTextFieldStyle: Sendable {
    public static var roundedBorder: RoundedBorderTextFieldStyle { RoundedBorderTextFieldStyle() }
}

public struct TextInputAutocapitalization: Sendable {
    public static var never: Self { Self() }
    public static var sentences: Self { Self() }
}

public struct SubmitLabel: Sendable { public static var done: Self { Self() } }

public struct AccessibilityTraits: OptionSet, Sendable {
    public let rawValue: Int
    public init(rawValue: Int) { self.rawValue = rawValue }
    public static let isHeader = Self(rawValue: 1)
    public static let isSelected = Self(rawValue: 2)
    public static let isButton = Self(rawValue: 4)
}

public struct AccessibilityChildBehavior: Sendable {
    public static let ignore = Self()
    public static let combine = Self()
}

// What changes only how something looks leaves what a test walks as it is.
extension View {
    public func font(_ font: Font?) -> some View { changed() }
    public func foregroundStyle(_ color: Color) -> some View { changed() }
    public func opacity(_ opacity: Double) -> some View { changed() }
    public func tint(_ color: Color?) -> some View { changed() }
    public func lineLimit(_ number: Int?) -> some View { changed() }
    public func minimumScaleFactor(_ factor: CGFloat) -> some View { changed() }
    public func multilineTextAlignment(_ alignment: TextAlignment) -> some View { changed() }
    public func fixedSize(horizontal: Bool, vertical: Bool) -> some View { changed() }
    public func layoutPriority(_ value: Double) -> some View { changed() }
    public func padding(_ length: CGFloat) -> some View { changed() }
    public func padding(_ edges: Edge.Set, _ length: CGFloat? = nil) -> some View { changed() }
    public func frame(width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center)
        -> some View
    {
        changed()
    }
    public func frame(
        minWidth: CGFloat? = nil, maxWidth: CGFloat? = nil, minHeight: CGFloat? = nil,
        maxHeight: CGFloat? = nil, alignment: Alignment = .center
    ) -> some View {
        noting { node in if let minHeight { node.highest = minHeight } }
    }
    public func background(_ color: Color, in shape: some Shape) -> some View { changed() }
    public func background(_ view: some View) -> some View { changed() }
    public func overlay(alignment: Alignment = .center, @ViewBuilder content: () -> some View) -> some View {
        let over = content()
        return changed { make in make() + walk(over) }
    }
    public func ignoresSafeArea() -> some View { changed() }
    public func contentShape(_ shape: some Shape) -> some View { changed() }
    public func transition(_ transition: AnyTransition) -> some View { changed() }
    public func animation(_ animation: Animation?, value: some Equatable) -> some View { changed() }
    public func id(_ id: some Hashable) -> some View { changed() }
    public func buttonStyle(_ style: some ButtonStyle) -> some View { changed() }
    public func textFieldStyle(_ style: RoundedBorderTextFieldStyle) -> some View { changed() }
    public func autocorrectionDisabled(_ disabled: Bool = true) -> some View { changed() }
    public func textInputAutocapitalization(_ kind: TextInputAutocapitalization?) -> some View { changed() }
    public func submitLabel(_ label: SubmitLabel) -> some View { changed() }
    public func onSubmit(_ action: @escaping @MainActor () -> Void) -> some View { changed() }
    public func accessibilityHint(_ words: String) -> some View { changed() }
    public func accessibilityElement(children: AccessibilityChildBehavior = .ignore) -> some View {
        changed()
    }
    public func accessibilityAction(_ action: @escaping @MainActor () -> Void) -> some View { changed() }
    public func accessibilityAction(named name: String, _ action: @escaping @MainActor () -> Void)
        -> some View
    {
        changed()
    }
}

// What a test can see or touch.
extension View {
    public func disabled(_ disabled: Bool) -> some View { with(\.isEnabled, !disabled) }
    public func environment<Value: Sendable>(
        _ key: WritableKeyPath<EnvironmentValues, Value>, _ value: Value
    ) -> some View {
        with(key, value)
    }
    public func onTapGesture(count: Int = 1, perform action: @escaping @MainActor () -> Void) -> some View {
        noting { $0.tap = action }
    }
    public func onLongPressGesture(perform action: @escaping @MainActor () -> Void) -> some View {
        noting { $0.hold = action }
    }
    public func accessibilityLabel(_ words: String) -> some View { noting { $0.label = words } }
    public func accessibilityHidden(_ hidden: Bool) -> some View { noting { $0.hidden = hidden } }
    public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View {
        noting { node in
            if traits.contains(.isHeader) { node.header = true }
            if traits.contains(.isSelected) { node.selected = true }
        }
    }
}
