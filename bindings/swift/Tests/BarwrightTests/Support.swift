import Barwright
import Foundation
import XCTest

/// A morning of the off-season, on a device that has been up for an hour.
func reading(after ms: Int64 = 0) -> Reading {
    Reading(
        wallMs: 1_794_297_600_000 + ms, offsetMinutes: 0, bootMs: 3_600_000 + ms, bootId: "first")
}

/// A folder of its own for one test.
func freshFolder() throws -> URL {
    let folder = FileManager.default.temporaryDirectory
        .appendingPathComponent("barwright-\(UUID().uuidString)")
    try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    return folder
}
