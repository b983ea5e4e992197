import Barwright
import Foundation
import XCTest

/// A morning of the off-season, on a device that has been up for an hour.
func reading(after ms: Int64 = 0) -> Reading {
    Reading(
        wallMs: 1_794_297_600_000 + ms, offsetMinutes: 0, bootMs: 3_600_000 + ms, bootId: "first")
}

/// Where the tests' folders lie: gone with what is in it when the tests are over.
private let allFolders: URL = {
    let folder = FileManager.default.temporaryDirectory
        .appendingPathComponent("barwright-tests-\(ProcessInfo.processInfo.processIdentifier)")
    atexit { try? FileManager.default.removeItem(at: allFolders) }
    return folder
}()

/// A folder of its own for one test.
func freshFolder() throws -> URL {
    let folder = allFolders.appendingPathComponent(UUID().uuidString)
    try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    return folder
}

/// A file that is not there yet.
func freshPath() throws -> String {
    try freshFolder().appendingPathComponent("log.db").path
}

/// An engine with `plan` adopted.
func engineWithPlan(at path: String? = nil, locale: String = "en-GB") throws -> Engine {
    let engine = try Engine.open(path: path ?? freshPath(), locale: locale)
    _ = try engine.dispatch(intent: .adoptPlan(text: plan), reading: reading())
    return engine
}

/// Begins the session that is on.
let begin = Intent.begin(session: nil, minutes: nil)

/// The floor as it stands.
let floor = Look.floor(draft: Draft())

/// Records a part as called.
func record(
    _ part: String? = nil, amount: UInt32? = nil, leftHalves: UInt8? = nil, helped: UInt32 = 0
) -> Intent {
    .record(
        part: part, amount: amount, leftHalves: leftHalves, ended: .asCalled, helped: helped,
        last: false)
}

/// Runs `call`, which has to end in an error of the engine.
func engineError(
    _ call: () throws -> Void, file: StaticString = #filePath, line: UInt = #line
) -> EngineError? {
    do {
        try call()
        XCTFail("no error", file: file, line: line)
    } catch let error as EngineError {
        return error
    } catch {
        XCTFail("another error: \(error)", file: file, line: line)
    }
    return nil
}

/// The code of a refusal; nil when it was taken after all. Any other end fails the test.
@discardableResult
func refusal(
    _ call: () throws -> Void, file: StaticString = #filePath, line: UInt = #line
) -> RefusalCode? {
    do {
        try call()
    } catch EngineError.Refused(let code, let reason, _) {
        XCTAssertFalse(reason.isEmpty, file: file, line: line)
        return code
    } catch {
        XCTFail("another end: \(error)", file: file, line: line)
    }
    return nil
}

/// Two sets of one exercise.
let plan = """
    name = "Erg room"
    weeks = 2

    [[session]]
    name = "Legs"

    [[session.exercise]]
    name = "Back squat"
    sets = 2
    reps = 5
    load = "100 kg"
    left = "1-2"
    rest = "3:00"
    ramp = "none"
    """
