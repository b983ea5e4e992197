import Barwright
import BarwrightTesting
import Dispatch
import Foundation
import XCTest

/// Opening, giving up the file, the end, defects inside, many threads.
final class LifeTests: XCTestCase {
    func testTheFileIsGivenUpAndTakenAgainByTheNextCall() throws {
        let path = try freshPath()
        let engine = try engineWithPlan(at: path)
        let before = try engine.dispatch(intent: begin, reading: reading())
        try engine.suspend()
        try engine.suspend()

        // Given up indeed: another engine can have it.
        try Engine.open(path: path, locale: "en-GB").shutDown()

        XCTAssertEqual(try engine.view(look: floor, reading: reading()).screen, before.screen)
        try engine.shutDown()
    }

    func testASecondEngineForTheSameFileIsRefused() throws {
        let path = try freshPath()
        let first = try engineWithPlan(at: path)
        let refused = engineError { _ = try Engine.open(path: path, locale: "en-GB") }
        guard case .Storage(let reason, let keptAt) = refused else {
            return XCTFail("\(String(describing: refused))")
        }
        XCTAssertTrue(reason.contains("has this file open"), reason)
        XCTAssertEqual(keptAt, path)
        // The first is none the worse for it.
        _ = try first.dispatch(intent: begin, reading: reading())

        // While the file is given up another may have it; then it is the first that has to wait.
        try first.suspend()
        let second = try Engine.open(path: path, locale: "en-GB")
        let waits = engineError { _ = try first.view(look: floor, reading: reading()) }
        guard case .Storage = waits else { return XCTFail("\(String(describing: waits))") }
        try second.shutDown()
        guard case .floor = try first.view(look: floor, reading: reading()).screen else {
            return XCTFail("another screen than the floor")
        }
        try first.shutDown()
    }

    func testAfterTheEndEveryCallSaysSo() throws {
        let path = try freshPath()
        let engine = try engineWithPlan(at: path)
        try engine.shutDown()
        let calls: [() throws -> Void] = [
            { _ = try engine.dispatch(intent: .wake, reading: reading()) },
            { _ = try engine.view(look: floor, reading: reading()) },
            { try engine.suspend() },
            { _ = try engine.versions() },
            { _ = try engine.checkRecords() },
            { _ = try engine.backUp(path: freshPath()) },
            { try engine.shutDown() },
        ]
        for call in calls {
            let closed = engineError(call)
            guard case .Closed(let reason) = closed else {
                return XCTFail("\(String(describing: closed))")
            }
            XCTAssertFalse(reason.isEmpty)
        }
        try Engine.open(path: path, locale: "en-GB").shutDown()
    }

    func testRecordsAreCheckedCopiedAndReadBackWhenTheyAreDamaged() throws {
        let path = try freshPath()
        let engine = try engineWithPlan(at: path)
        let second = plan.replacingOccurrences(of: "Erg room", with: "Boat room")
        _ = try engine.dispatch(intent: .adoptPlan(text: second), reading: reading())
        XCTAssertEqual(try engine.checkRecords(), 2)
        let copy = try freshPath()
        XCTAssertEqual(try engine.backUp(path: copy), 2)
        guard case .Storage(_, let keptAt) = engineError({ _ = try engine.backUp(path: copy) })
        else { return XCTFail("written over") }
        XCTAssertEqual(keptAt, copy)
        // An engine has it open.
        guard case .Storage = engineError({ _ = try recover(path: path, locale: "en-GB") }) else {
            return XCTFail("read back under an engine")
        }
        try engine.shutDown()
        XCTAssertEqual(refusal { _ = try recover(path: path, locale: "en-GB") }, .alreadySo)

        // As a failing disk would spoil it: no length changes.
        var bytes = try Data(contentsOf: URL(fileURLWithPath: copy))
        var places = 0
        while let place = bytes.range(of: Data("Boat room".utf8)) {
            bytes.replaceSubrange(place, with: Data("Boat r0om".utf8))
            places += 1
        }
        XCTAssertGreaterThan(places, 0)
        try bytes.write(to: URL(fileURLWithPath: copy))
        let recovered = try recover(path: copy, locale: "en-GB")
        XCTAssertEqual(recovered.kept, 1)
        XCTAssertFalse(recovered.reason.isEmpty)
        XCTAssertEqual(try Data(contentsOf: URL(fileURLWithPath: recovered.aside)), bytes)
        let back = try Engine.open(path: copy, locale: "en-GB")
        guard case .weeks(let weeks) = try back.view(look: .weeks, reading: reading()).screen else {
            return XCTFail("another screen than Weeks")
        }
        XCTAssertEqual(weeks.title, "Erg room")
        try back.shutDown()
    }

    func testADefectInsideIsCaughtAndTheStateReadBackFromTheLog() throws {
        let engine = try engineWithPlan()
        let before = try engine.dispatch(intent: begin, reading: reading())
        for _ in 0..<3 {
            let broken = engineError { try breakInside(engine: engine) }
            guard case .Broken(let reason, let report) = broken else {
                return XCTFail("\(String(describing: broken))")
            }
            XCTAssertFalse(reason.isEmpty)
            XCTAssertTrue(report.hasPrefix("For the makers: “barwright "))
            XCTAssertEqual(try engine.view(look: floor, reading: reading()).screen, before.screen)
        }
        let done = try engine.dispatch(intent: record("0.0.0"), reading: reading(after: 60_000))
        guard case .floor(let next) = done.screen else { return XCTFail("\(done.screen)") }
        XCTAssertEqual(next.part, "0.1.0@2")
        try engine.shutDown()
        guard case .Closed = engineError({ try breakInside(engine: engine) }) else {
            return XCTFail("another error than Closed")
        }
    }

    func testADefectInOneThreadLeavesNoLockBehindForAnother() throws {
        let engine = try engineWithPlan()
        DispatchQueue.global().sync {
            guard case .Broken = engineError({ try breakInside(engine: engine) }) else {
                return XCTFail("another error than Broken")
            }
        }
        guard case .weeks = try engine.view(look: .weeks, reading: reading()).screen else {
            return XCTFail("another screen than Weeks")
        }
        try engine.shutDown()
    }

    func testOfTheSameTapFromManyThreadsOneIsRecorded() throws {
        let engine = try engineWithPlan()
        _ = try engine.dispatch(intent: begin, reading: reading())
        let counts = Counts()
        DispatchQueue.concurrentPerform(iterations: 32) { _ in
            let refused = refusal {
                _ = try engine.dispatch(
                    intent: record("0.0.0", leftHalves: 2), reading: reading(after: 60_000))
            }
            counts.add(refused)
        }
        XCTAssertEqual(counts.recorded, 1)
        XCTAssertEqual(counts.stale, 31)
        try engine.shutDown()
    }
}

/// What many threads saw.
private final class Counts: @unchecked Sendable {
    private let lock = NSLock()
    private(set) var recorded = 0
    private(set) var stale = 0

    func add(_ refused: RefusalCode?) {
        lock.withLock {
            switch refused {
            case nil: recorded += 1
            case .stale: stale += 1
            default: XCTFail("\(String(describing: refused))")
            }
        }
    }
}
