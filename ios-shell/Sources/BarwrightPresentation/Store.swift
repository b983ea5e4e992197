import Foundation

/// Where the log lies: in the app's own container, backed up with the device.
public enum Store {
    /// The file's path in `support`; its folder is made.
    ///
    /// The folder is protected until the first unlock after a start, not whenever the device is
    /// locked: a set can be recorded from a notification on a locked phone, and the log with its
    /// write-ahead file has to take it.
    public static func path(in support: URL) throws -> String {
        let folder = support.appendingPathComponent("store", isDirectory: true)
        #if os(iOS)
            let protection: [FileAttributeKey: Any] = [
                .protectionKey: FileProtectionType.completeUntilFirstUserAuthentication
            ]
            try FileManager.default.createDirectory(
                at: folder, withIntermediateDirectories: true, attributes: protection)
            try FileManager.default.setAttributes(protection, ofItemAtPath: folder.path)
        #else
            try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        #endif
        return folder.appendingPathComponent("barwright.db").path
    }

    /// A path in `temporary` for a copy to be handed on: nothing lies there. Nil where none can be
    /// had.
    static func copy(in temporary: URL, named name: String = "barwright.db") -> String? {
        let folder = temporary.appendingPathComponent("copy", isDirectory: true)
        // What was handed on before has been taken by now.
        try? FileManager.default.removeItem(at: folder)
        guard
            (try? FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)) != nil
        else { return nil }
        // A name alone: no path leads out of the folder.
        return folder.appendingPathComponent(URL(fileURLWithPath: name).lastPathComponent).path
    }
}
