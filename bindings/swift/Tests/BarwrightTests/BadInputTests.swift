import Barwright
import BarwrightTesting
import Foundation
import XCTest

/// Text that is hard on a reader: scripts, marks, zero bytes, nothing, very much.
private let texts: [String] = [
    "", " ", "\u{0}", "\u{200B}", "\u{FEFF}", "שלום", "مرحبا", "日本語", "नमस्ते", "🏋️‍♀️💪", "e\u{301}\u{301}\u{301}",
    "\u{202E}txet", "'; DROP TABLE event; --", "%s%n", "\n\r\t",
    String(repeating: "🚀", count: 10_000), String(repeating: "x", count: 1_000_000),
]

/// Whatever comes in, an answer or an error of ours comes out, and the engine goes on.
final class BadInputTests: XCTestCase {
    private func running() throws -> Engine {
        let engine = try engineWithPlan()
        _ = try engine.dispatch(intent: begin, reading: reading())
        return engine
    }

    private func goesOn(_ engine: Engine) throws {
        guard case .floor = try engine.view(look: floor, reading: reading()).screen else {
            return XCTFail("another screen than the floor")
        }
        try engine.shutDown()
    }

    func testAnyText() throws {
        let engine = try running()
        for text in texts {
            let intents: [Intent] = [
                .write(field: text, text: text), .write(field: "note", text: text),
                .adoptPlan(text: text), .addGym(text: text), .chooseGym(name: text),
                .begin(session: text, minutes: nil), .swap(entry: 0, exercise: text, why: .wish),
                .changeLoad(entry: 0, load: text, onlyNext: false, sure: false),
                .holdBack(owner: text, held: true), .barHolds(side: [text, text]), record(text),
                .correct(
                    part: text, amount: nil, load: text, leftHalves: nil, ended: .asCalled,
                    helped: 0),
            ]
            for intent in intents {
                refusal { _ = try engine.dispatch(intent: intent, reading: reading()) }
                XCTAssertEqual(try intentFromJson(json: intentToJson(intent: intent)), intent)
            }
            let looks: [Look] = [
                .lift(exercise: text, page: 0), .plan(text: text, week: nil),
                .today(session: text, minutes: nil),
                .floor(draft: Draft(load: text, correct: text, panel: text)),
            ]
            for look in looks { refusal { _ = try engine.view(look: look, reading: reading()) } }
            let clock = Reading(
                wallMs: reading().wallMs, offsetMinutes: 0, bootMs: 0, bootId: text)
            refusal { _ = try engine.view(look: .weeks, reading: clock) }
        }
        try goesOn(engine)
    }

    func testNumbersAtTheEdges() throws {
        let engine = try running()
        let most = UInt32.max
        let intents: [Intent] = [
            .begin(session: nil, minutes: 0), .begin(session: nil, minutes: most),
            record(amount: most), record(leftHalves: .max), record(helped: most),
            .correct(
                part: "4294967295.65535.255", amount: most, load: nil, leftHalves: nil,
                ended: .pain, helped: most),
            .skipExercise(entry: most), .swap(entry: most, exercise: "leg-press", why: .pain),
            .postpone(entry: most), .takeUp(entry: most), .addSet(entry: most),
            .changeLoad(entry: most, load: "100 kg", onlyNext: false, sure: true),
            .changeLoad(entry: 0, load: "99999999999 kg", onlyNext: true, sure: true),
            .guardedBy(entry: most, guard: .pins), .useKit(entry: most, kit: []),
            .restBy(seconds: .min), .restBy(seconds: .max),
        ]
        for intent in intents {
            let code = refusal { _ = try engine.dispatch(intent: intent, reading: reading()) }
            XCTAssertNotNil(code, "\(intent)")
        }
        let looks: [Look] = [
            .lift(exercise: "back-squat", page: most), .balance(weeks: 0), .balance(weeks: most),
            .plan(text: nil, week: most), .today(session: nil, minutes: 0),
            .today(session: nil, minutes: most), .floor(draft: Draft(amount: most, helped: most)),
        ]
        for look in looks { refusal { _ = try engine.view(look: look, reading: reading()) } }

        let now = reading().wallMs
        let clocks = [
            Reading(wallMs: .min, offsetMinutes: 0), Reading(wallMs: .max, offsetMinutes: 0),
            Reading(wallMs: 0, offsetMinutes: 0), Reading(wallMs: now, offsetMinutes: .min),
            Reading(wallMs: now, offsetMinutes: .max),
            Reading(wallMs: now, offsetMinutes: 0, bootMs: .min, bootId: "first"),
            Reading(
                wallMs: now, offsetMinutes: 0, bootMs: 0, bootId: String(repeating: "x", count: 65)),
        ]
        for clock in clocks {
            let tap = refusal { _ = try engine.dispatch(intent: .wake, reading: clock) }
            XCTAssertEqual(tap, .badReading, "\(clock)")
            let look = refusal { _ = try engine.view(look: .weeks, reading: clock) }
            XCTAssertEqual(look, .badReading, "\(clock)")
        }
        try goesOn(engine)
    }

    func testEmptyAndHugeLists() throws {
        let engine = try running()
        for count in [0, 1, 300, 100_000] {
            let side = [String](repeating: "20 kg", count: count)
            let code = refusal { _ = try engine.dispatch(intent: .barHolds(side: side), reading: reading()) }
            if count == 100_000 { XCTAssertNotNil(code) }
            let kit = [KitChoice](repeating: .belt, count: count)
            refusal { _ = try engine.dispatch(intent: .useKit(entry: 0, kit: kit), reading: reading()) }
        }
        try goesOn(engine)
    }

    func testFilesThatAreVeryLongOrVeryDeep() throws {
        let engine = try running()
        let files = [
            String(repeating: "[[session]]\nname = \"x\"\n", count: 20_000),
            "a = " + String(repeating: "[", count: 200_000),
            "a = " + String(repeating: "{a=", count: 200_000),
            "a" + String(repeating: ".a", count: 200_000) + " = 1",
            "[" + String(repeating: "a.", count: 100_000) + "a]",
            "name = \"" + String(repeating: "x", count: 3_000_000) + "\"",
        ]
        for text in files {
            let plan = refusal { _ = try engine.dispatch(intent: .adoptPlan(text: text), reading: reading()) }
            XCTAssertEqual(plan, .faults)
            let gym = refusal { _ = try engine.dispatch(intent: .addGym(text: text), reading: reading()) }
            XCTAssertEqual(gym, .faults)
            refusal { _ = try engine.view(look: .plan(text: text, week: nil), reading: reading()) }
        }
        try goesOn(engine)
    }

    func testPathsThatCannotBeOpened() throws {
        let engine = try running()
        let folder = try freshFolder()
        let list = folder.appendingPathComponent("shopping.txt")
        let content = String(repeating: "eggs, oats, milk\n", count: 100)
        try content.write(to: list, atomically: true, encoding: .utf8)
        let paths = [
            "", folder.path, folder.path + "/no/such/folder/log.db", "/proc/version/log.db",
            list.path, folder.path + "/a\u{0}b",
            folder.path + "/" + String(repeating: "x", count: 5_000),
        ]
        for path in paths {
            let error = engineError { _ = try Engine.open(path: path, locale: "en-GB") }
            guard case .Storage(let reason, _) = error else {
                XCTFail("\(path): \(String(describing: error))")
                continue
            }
            XCTAssertFalse(reason.isEmpty)
            guard case .Storage = engineError({ _ = try engine.backUp(path: path) }) else {
                XCTFail("a copy at \(path)")
                continue
            }
            // Nothing there, or nothing of ours: neither is touched.
            switch engineError({ _ = try recover(path: path, locale: "en-GB") }) {
            case .Storage, .Refused: break
            case let other: XCTFail("\(path): \(String(describing: other))")
            }
        }
        XCTAssertEqual(try String(contentsOf: list, encoding: .utf8), content)
        try goesOn(engine)
    }

    func testAPathInAnyScript() throws {
        for name in ["журнал.db", "日誌 🏋️.db", "שלום.db", "a b'c\"d%20?.db"] {
            let path = try freshFolder().path + "/" + name
            try engineWithPlan(at: path).shutDown()
            XCTAssertTrue(FileManager.default.fileExists(atPath: path), path)
            let engine = try Engine.open(path: path, locale: "en-GB")
            guard case .weeks(let weeks) = try engine.view(look: .weeks, reading: reading()).screen else {
                return XCTFail("another screen than Weeks")
            }
            XCTAssertEqual(weeks.title, "Erg room")
            try engine.shutDown()
        }
    }

    func testALocaleThatIsNotKnownWritesAPointAndKilograms() throws {
        for locale in texts + ["xx-YY", "en-GB", "C", "tlh"] {
            let engine = try engineWithPlan(locale: locale)
            let begun = try engine.dispatch(intent: begin, reading: reading())
            guard case .floor(let seen) = begun.screen else { return XCTFail("\(begun.screen)") }
            XCTAssertEqual(seen.bar.total, "100 kg")
            try engine.shutDown()
        }
    }

    func testWhatIsNoIntentIsToldAsSuch() {
        for json in texts + ["{}", "null", "\"nothing\"", "{\"begin\":{\"minutes\":-1}}"] {
            XCTAssertThrowsError(try intentFromJson(json: json)) { error in
                XCTAssertTrue(error is Unreadable, "\(error)")
            }
        }
    }
}
