/// A colour as red, green and blue from 0 to 1, and how far it covers.
public struct Tint: Sendable, Equatable {
    public let red: Double
    public let green: Double
    public let blue: Double
    public let cover: Double

    /// Of a number such as `0x12181B`.
    init(_ number: UInt32, cover: Double = 1) {
        red = Double((number >> 16) & 0xFF) / 255
        green = Double((number >> 8) & 0xFF) / 255
        blue = Double(number & 0xFF) / 255
        self.cover = cover
    }

    /// Of `#RRGGBB`, as the equipment writes it; nil for anything else.
    init?(_ text: String) {
        guard text.count == 7, text.hasPrefix("#"), let number = UInt32(text.dropFirst(), radix: 16)
        else { return nil }
        self.init(number)
    }
}

/// The colours of one appearance: slate and chalk, brass for the one thing to do now, clay for a
/// warning. A test checks the contrasts.
public struct Palette: Sendable, Equatable {
    public let ground: Tint
    public let ink: Tint
    public let quiet: Tint
    public let outline: Tint
    public let brass: Tint
    public let onBrass: Tint
    public let warn: Tint
    public let steel: Tint
    public let plate: Tint
    public let plateEdge: Tint
    public let band: Tint

    /// Chalk type on slate.
    public static let dark = Palette(
        ground: Tint(0x12181B), ink: Tint(0xF3F1E7), quiet: Tint(0xBCBDB6), outline: Tint(0x5F686C),
        brass: Tint(0xE0A63A), onBrass: Tint(0x12181B), warn: Tint(0xE0795C), steel: Tint(0x8F989B),
        plate: Tint(0xC9CBC5), plateEdge: Tint(0x12181B), band: Tint(0xF3F1E7, cover: 0.2))

    /// Slate type on chalk. Clay is darker here, to be read as type.
    public static let light = Palette(
        ground: Tint(0xF3F1E7), ink: Tint(0x12181B), quiet: Tint(0x454D51), outline: Tint(0x7C8281),
        brass: Tint(0xE0A63A), onBrass: Tint(0x12181B), warn: Tint(0x9C3A1E), steel: Tint(0x7F888B),
        plate: Tint(0xC9CBC5), plateEdge: Tint(0x5B6467), band: Tint(0x454D51, cover: 0.2))

    public static func of(dark: Bool) -> Palette { dark ? .dark : .light }
}
