import Foundation

/// Only what the core does not say: the program's places, the device's own matters. Each is looked up
/// by its English words in the app's `Localizable.strings`, and stays English where there are no others.
public enum Words {
    public static let places = word("Go to…")
    public static let placesTitle = word("Go to")
    public static let today = word("Today")
    public static let floor = word("Floor")
    public static let weeks = word("Weeks")
    public static let tally = word("Tally")
    public static let lift = word("Lift")
    public static let balance = word("Balance")
    public static let equipment = word("Equipment")
    public static let plan = word("Plan")
    public static let care = word("Take care")
    public static let openPlan = word("Open a file…")
    public static let openGym = word("Open an equipment file…")
    public static let copy = word("Share a copy of the records…")
    public static let handOn = word("Hand it on as a file…")
    public static let readAloud = word("Read this screen aloud")
    public static let back = word("Back")

    public static let onThisPhone = word("On this phone")
    public static let speak = word("Speak the rest and the next set")

    public static let byKind = word("By kind of week")
    public static let why = word("Why?")
    public static let whyThisLoad = word("Why this load?")
    public static let keep = word("Keep")
    public static let type = word("Type")
    public static let close = word("Close")
    public static let anyway = word("Do it all the same")
    public static let leaveIt = word("Leave it as it is")
    public static let understood = word("Understood")
    public static let unreadableFile = word("That file can't be read. Nothing was changed.")
    public static let noCopy = word("There is no room for a copy. Make room and tap again.")
    public static let noNotices = word(
        "Notifications are off: the end of a rest is only felt while this is open. Everything else works.")
    static let recover = word("Set it aside and read what is good")
    static let broken = word("Something broke inside. What was recorded is kept, and you can go on.")

    /// A field's key, to be read aloud.
    public static func type(_ row: String) -> String { word("Type %@", row) }

    public static func keep(_ field: String) -> String { word("Keep: %@", field) }

    /// The second key of an effort key, behind a long press.
    public static func heldFor(_ half: String) -> String { word("Hold for %@", half) }

    /// Where a fault stands, and what it is.
    public static func faultPlace(_ fault: FileFault) -> String {
        word("Line %@, column %@ · %@", "\(fault.line)", "\(fault.column)", fault.label)
    }

    /// In the device's language; what is filled in goes where the sentence has its marks.
    private static func word(_ english: String, _ filled: String...) -> String {
        let said = Bundle.main.localizedString(forKey: english, value: english, table: nil)
        return filled.reduce(said) { words, next in
            words.range(of: "%@").map { words.replacingCharacters(in: $0, with: next) } ?? words
        }
    }
}
