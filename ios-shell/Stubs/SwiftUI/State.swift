public protocol DynamicProperty {}

@MainActor @propertyWrapper public struct State<Value>: DynamicProperty {
    @MainActor final class Box {
        var value: Value
        init(_ value: Value) { self.value = value }
    }

    let box: Box

    public init(wrappedValue: Value) { box = Box(wrappedValue) }
    public init(initialValue: Value) { box = Box(initialValue) }

    public var wrappedValue: Value {
        get { box.value }
        nonmutating set { box.value = newValue }
    }

    public var projectedValue: Binding<Value> {
        let box = box
        return Binding(get: { box.value }, set: { box.value = $0 })
    }
}

@MainActor @propertyWrapper public struct Binding<Value> {
    let get: @MainActor () -> Value
    let set: @MainActor (Value) -> Void

    public init(get: @escaping @MainActor () -> Value, set: @escaping @MainActor (Value) -> Void) {
        self.get = get
        self.set = set
    }

    public var wrappedValue: Value {
        get { get() }
        nonmutating set { set(newValue) }
    }

    public var projectedValue: Binding<Value> { self }
}

@MainActor @propertyWrapper public struct ScaledMetric<Value: BinaryFloatingPoint>: DynamicProperty {
    public let wrappedValue: Value
    public init(wrappedValue: Value, relativeTo style: Font.TextStyle) { self.wrappedValue = wrappedValue }
}

@MainActor @propertyWrapper public struct Environment<Value>: DynamicProperty {
    let key: KeyPath<EnvironmentValues, Value>
    public init(_ key: KeyPath<EnvironmentValues, Value>) { self.key = key }
    public var wrappedValue: Value { EnvironmentValues.now[keyPath: key] }
}

public struct EnvironmentValues {
    /// What views see while they are walked; a test sets it.
    @MainActor public static var now = EnvironmentValues()

    public var colorScheme = ColorScheme.light
    public var layoutDirection = LayoutDirection.leftToRight
    public var verticalSizeClass: UserInterfaceSizeClass? = .regular
    public var accessibilityReduceMotion = false
    public var isEnabled = true
    public var dynamicTypeSize = DynamicTypeSize.large
    public var scenePhase = ScenePhase.active

    public init() {}
}

public enum ColorScheme: Sendable { case light, dark }
public enum LayoutDirection: Sendable { case leftToRight, rightToLeft }
public enum UserInterfaceSizeClass: Sendable { case compact, regular }
public enum DynamicTypeSize: Sendable {
    case large, accessibility2
    public var isAccessibilitySize: Bool {
        switch self {
        case .large: false
        case .accessibility2: true
        }
    }
}
public enum ScenePhase: Sendable { case background, inactive, active }

public protocol ObservableObject: AnyObject {}

@propertyWrapper public struct Published<Value> {
    public var wrappedValue: Value
    public init(wrappedValue: Value) { self.wrappedValue = wrappedValue }
}

@MainActor @propertyWrapper public struct ObservedObject<Object: ObservableObject>: DynamicProperty {
    public let wrappedValue: Object
    public init(wrappedValue: Object) { self.wrappedValue = wrappedValue }
    public var projectedValue: Wrapper { Wrapper(object: wrappedValue) }

    @dynamicMemberLookup @MainActor public struct Wrapper {
        let object: Object
        public subscript<Value>(dynamicMember key: ReferenceWritableKeyPath<Object, Value>) -> Binding<Value>
        {
            let object = object
            return Binding(get: { object[keyPath: key] }, set: { object[keyPath: key] = $0 })
        }
    }
}
