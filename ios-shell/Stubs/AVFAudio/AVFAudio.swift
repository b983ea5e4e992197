// A stand-in for the names of AVFAudio that the app uses; see Stubs/SwiftUI.
import Foundation

public enum AVSpeechBoundary { case immediate, word }
public final class AVSpeechUtterance { public init(string: String) {} }
public final class AVSpeechSynthesizer {
    public init() {}
    @discardableResult public func stopSpeaking(at boundary: AVSpeechBoundary) -> Bool { false }
    public func speak(_ utterance: AVSpeechUtterance) {}
}
