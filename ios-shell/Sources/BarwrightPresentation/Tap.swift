import Barwright

/// What a view hands over when it is touched.
public enum Tap: Sendable, Equatable {
    /// A key of the core's.
    case act(Action)
    /// The text of a field.
    case write(field: String, text: String)
    /// A place.
    case go(Look)
    /// The list of places.
    case places
    /// Back to where we came from.
    case back
    /// The screen, read aloud.
    case readAloud
    /// A file is to be chosen.
    case pick(FileKind)
    /// A copy of the records is to be shared.
    case copy
    /// What was made by hand is to be shared as a file.
    case handOn(name: String, text: String)
    /// Words are spoken, or no longer.
    case speaks(Bool)
    /// What was asked is meant all the same.
    case meant
    /// What was said is understood.
    case understood
}

/// What a file from elsewhere holds.
public enum FileKind: Sendable, Equatable {
    /// A plan.
    case plan
    /// What a gym has.
    case gym
}

/// Where views send their taps.
public typealias Send = @MainActor (Tap) -> Void
