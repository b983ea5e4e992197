/// Only what the core does not say: the program's places, the device's own matters.
public enum Words {
    public static let places = "Go to…"
    public static let placesTitle = "Go to"
    public static let today = "Today"
    public static let floor = "Floor"
    public static let weeks = "Weeks"
    public static let tally = "Tally"
    public static let lift = "Lift"
    public static let balance = "Balance"
    public static let equipment = "Equipment"
    public static let plan = "Plan"
    public static let care = "Take care"
    public static let openPlan = "Open a plan file…"
    public static let openGym = "Open an equipment file…"
    public static let copy = "Share a copy of the records…"
    public static let readAloud = "Read this screen aloud"
    public static let back = "Back"

    public static let onThisPhone = "On this phone"
    public static let speak = "Speak the rest and the next set"

    public static let byKind = "By kind of week"
    public static let why = "Why?"
    public static let whyThisLoad = "Why this load?"
    public static let keep = "Keep"
    public static let type = "Type"
    public static let close = "Close"
    public static let loadAnyway = "Load it all the same"
    public static let leaveIt = "Leave it as it is"
    public static let understood = "Understood"
    public static let unreadableFile = "That file can't be read. Nothing was changed."
    public static let noCopy = "There is no room for a copy. Make room and tap again."
    public static let noNotices =
        "Notifications are off: the end of a rest is only felt while this is open. Everything else works."
    static let recover = "Set it aside and read what is good"
    static let broken = "Something broke inside. What was recorded is kept, and you can go on."

    /// A field's key, to be read aloud.
    public static func type(_ row: String) -> String { "Type \(row)" }

    public static func keep(_ field: String) -> String { "Keep: \(field)" }

    /// The second key of an effort key, behind a long press.
    public static func heldFor(_ half: String) -> String { "Hold for \(half)" }

    /// Where a fault stands, and what it is.
    public static func faultPlace(_ fault: FileFault) -> String {
        "Line \(fault.line), column \(fault.column) · \(fault.label)"
    }
}
