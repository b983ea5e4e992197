import Foundation

/// What this phone was told, what was said to it once, and where it was. No fact of training is here.
@MainActor
public final class Said {
    private let kept: UserDefaults

    public init(_ kept: UserDefaults = .standard) {
        self.kept = kept
    }

    var speaks: Bool {
        get { kept.bool(forKey: "speaks") }
        set { kept.set(newValue, forKey: "speaks") }
    }

    /// Where the lifter was, for a process that ends.
    var trail: Data? {
        get { kept.data(forKey: "trail") }
        set { kept.set(newValue, forKey: "trail") }
    }

    /// Whether a word was never said before; from now on it was.
    func first(_ word: String) -> Bool {
        let first = !kept.bool(forKey: "said \(word)")
        if first { kept.set(true, forKey: "said \(word)") }
        return first
    }
}
