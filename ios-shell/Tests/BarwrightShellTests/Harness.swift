import Barwright
import Foundation
import SwiftUI
import XCTest

@testable import BarwrightPresentation
@testable import BarwrightViews

/// A clock that a test sets; a Monday evening in January, 18:05 an hour ahead of UTC.
final class TestClocks: Clocks, @unchecked Sendable {
    private let lock = NSLock()
    private var now = Reading(
        wallMs: 1_768_237_500_000, offsetMinutes: 60, bootMs: 5_000_000, bootId: "boot 7")

    func read() -> Reading { lock.withLock { now } }

    func set(_ reading: Reading) { lock.withLock { now = reading } }

    /// Time goes by on every clock there is.
    func pass(_ seconds: Int64) {
        let was = read()
        set(
            Reading(
                wallMs: was.wallMs + seconds * 1000, offsetMinutes: was.offsetMinutes,
                bootMs: was.bootMs.map { $0 + seconds * 1000 }, bootId: was.bootId))
    }

    /// Only the wall clock is set.
    func turnWall(_ seconds: Int64) {
        let was = read()
        set(
            Reading(
                wallMs: was.wallMs + seconds * 1000, offsetMinutes: was.offsetMinutes,
                bootMs: was.bootMs, bootId: was.bootId))
    }

    /// The device starts anew, so many seconds later.
    func restart(after seconds: Int64) {
        let was = read()
        set(
            Reading(
                wallMs: was.wallMs + seconds * 1000, offsetMinutes: was.offsetMinutes, bootMs: 9000,
                bootId: "boot 8"))
    }
}

/// A device that writes down what is asked of it.
@MainActor final class TestDevice: Device {
    enum Asked: Equatable {
        case notify([Notice])
        case withdraw
        case feel(Felt)
        case announce(String)
        case speak(String)
        case keepAwake(Bool)
        case share(String, String)
        case pick(FileKind)
    }

    var asked: [Asked] = []
    /// What is pending now, as the device would hold it.
    var pending: [Notice] = []
    var awake = false
    var lookIn: Int64?

    func notify(_ notices: [Notice]) {
        pending = notices
        asked.append(.notify(notices))
    }

    func withdrawNotices() {
        pending = []
        asked.append(.withdraw)
    }

    func feel(_ mark: Felt) { asked.append(.feel(mark)) }
    func announce(_ words: String) { asked.append(.announce(words)) }
    func speak(_ words: String) { asked.append(.speak(words)) }
    func keepAwake(_ on: Bool) {
        awake = on
        asked.append(.keepAwake(on))
    }
    func share(path: String, mediaType: String) { asked.append(.share(path, mediaType)) }
    func pick(_ kind: FileKind) { asked.append(.pick(kind)) }
    func lookAgain(after milliseconds: Int64?) { lookIn = milliseconds }
}

/// The real engine, and what went through it.
final class SpyEngine: Asked, @unchecked Sendable {
    private let lock = NSLock()
    private let engine: Engine
    private var refusals: [RefusalCode] = []
    private var onMain = 0
    private var inside = 0
    private var overlaps = 0

    init(_ engine: Engine) { self.engine = engine }

    /// Codes of the refusals so far.
    var refused: [RefusalCode] { lock.withLock { refusals } }
    /// Calls that came on the main thread, or while another ran.
    var misplaced: Int { lock.withLock { onMain + overlaps } }

    func act(action: Action, reading: Reading) throws -> Answer {
        try watched { try engine.act(action: action, reading: reading) }
    }
    func suspend() throws { try watched { try engine.suspend() } }
    func shutDown() throws { try engine.shutDown() }
    func backUp(path: String) throws -> UInt64 { try watched { try engine.backUp(path: path) } }

    private func watched<T>(_ call: () throws -> T) throws -> T {
        lock.withLock {
            if Thread.isMainThread { onMain += 1 }
            if inside > 0 { overlaps += 1 }
            inside += 1
        }
        defer { lock.withLock { inside -= 1 } }
        do {
            return try call()
        } catch EngineError.Refused(let code, let reason, let ask) {
            lock.withLock { refusals.append(code) }
            throw EngineError.Refused(code: code, reason: reason, ask: ask)
        }
    }
}

/// Hands the engine that `Core` opened to the test.
final class Opened: @unchecked Sendable {
    private let lock = NSLock()
    private var engine: SpyEngine?

    var last: SpyEngine? { lock.withLock { engine } }

    func open(_ path: String, _ locale: String) throws -> SpyEngine {
        let opened = SpyEngine(try Engine.open(path: path, locale: locale))
        lock.withLock { engine = opened }
        return opened
    }
}

/// A phone with the shell on it, worked by touch.
@MainActor final class Handset {
    let clocks = TestClocks()
    let folder: URL
    let settings: UserDefaults
    private let suite = "barwright.\(UUID().uuidString)"
    private(set) var device = TestDevice()
    private(set) var opened = Opened()
    private(set) var core: Core
    private(set) var presenter: Presenter
    private let locale: String

    init(locale: String = "en-GB") throws {
        folder = FileManager.default.temporaryDirectory.appendingPathComponent(suite)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        settings = try XCTUnwrap(UserDefaults(suiteName: suite))
        self.locale = locale
        let (opened, path) = (opened, try Store.path(in: folder))
        core = Core(open: { try opened.open(path, locale) }, recover: { try recover(path: path, locale: locale) })
        presenter = Presenter(core: core, clocks: clocks, device: device, said: Said(settings))
    }

    var path: String { folder.appendingPathComponent("store/barwright.db").path }

    // MARK: The phone

    func start() async {
        presenter.comesToFront()
        await settle()
    }

    /// To the background, as far as the system lets it finish.
    func leave() async {
        await withCheckedContinuation { done in presenter.leaves { done.resume() } }
    }

    /// The system ends the process without a word: what is on disk stays, and nothing else. The new
    /// process finds a copy of the files taken while the old one still had them open.
    func die() async throws {
        await settle()
        let dead = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
        try FileManager.default.copyItem(at: folder, to: dead)
        core.end(at: clocks.read())
        try FileManager.default.removeItem(at: folder)
        try FileManager.default.copyItem(at: dead, to: folder)
        // Locks of a process end with it; their files would be there.
        try launch()
    }

    /// A new process on the same container.
    private func launch() throws {
        device = TestDevice()
        opened = Opened()
        let (opened, path, locale) = (opened, path, locale)
        core = Core(open: { try opened.open(path, locale) }, recover: { try recover(path: path, locale: locale) })
        presenter = Presenter(core: core, clocks: clocks, device: device, said: Said(settings))
    }

    func end() {
        core.end(at: clocks.read())
        settings.removePersistentDomain(forName: suite)
        try? FileManager.default.removeItem(at: folder)
    }

    /// Until nothing is on its way.
    func settle() async {
        for _ in 0..<4 {
            await withCheckedContinuation { done in
                core.view(.equipment, at: clocks.read()) { _ in done.resume() }
            }
        }
    }

    func pass(_ seconds: Int64) async {
        clocks.pass(seconds)
        if let due = device.lookIn, due <= seconds * 1000 {
            device.lookIn = nil
            presenter.lookAgain()
        }
        await settle()
    }

    // MARK: The core, behind the views' back

    @discardableResult
    func dispatch(_ intent: Intent) async -> Answered {
        let answer = await withCheckedContinuation { done in
            core.dispatch(intent, at: clocks.read()) { done.resume(returning: $0) }
        }
        await settle()
        return answer
    }

    func ask(_ look: Look) async throws -> Screen {
        let answer = await withCheckedContinuation { done in
            core.view(look, at: clocks.read()) { done.resume(returning: $0) }
        }
        guard case .success(let update) = answer else { throw Failed("refused: \(answer)") }
        return update.screen
    }

    /// The floor as the core has it.
    func floor() async throws -> FloorScreen {
        guard case .floor(let floor) = try await ask(.floor(draft: Draft())) else {
            throw Failed("another screen than the floor")
        }
        return floor
    }

    /// The demo's gym and plan, adopted, with the maxes that the plan goes by.
    func prepare() async throws {
        var intents: [Intent] = [
            .addGym(text: try demo("gym.toml")), .chooseGym(name: "Boathouse cellar"),
            .adoptPlan(text: try demo("plan.toml")), .write(field: "body-mass", text: "82.4 kg"),
        ]
        for (lift, max) in [
            ("back-squat", "142.5 kg"), ("bench-press", "97.5 kg"), ("deadlift", "175 kg"),
            ("overhead-press", "62.5 kg"), ("power-clean", "82.5 kg"),
        ] { intents.append(.write(field: "max:\(lift)", text: max)) }
        for intent in intents {
            if case .failure(let why) = await dispatch(intent) { throw Failed("\(intent): \(why)") }
        }
    }

    /// The demo: the same plan and gym, and six weeks of invented history.
    func demoStore() throws {
        try FileManager.default.copyItem(
            at: checkout.appendingPathComponent("ios-shell/.build/demo.db"),
            to: URL(fileURLWithPath: path))
    }

    /// The demo's first session that is named so, begun by touch.
    func begin(_ session: String? = nil) async throws {
        try await prepare()
        await start()
        if let session {
            presenter.send(.go(.today(session: session, minutes: nil)))
            await settle()
        }
        try await tap("Begin")
    }

    // MARK: What is on the screen

    /// The views as they are now.
    func nodes() -> [Node] {
        walk(RootView(shown: presenter.shown, send: presenter.send)).flatMap(\.all)
    }

    func texts() -> [String] { nodes().filter { $0.kind == .text }.map(\.text) }

    func sees(_ words: String) -> Bool { texts().contains { $0.contains(words) } }

    func keys() -> [Node] { nodes().filter { $0.tap != nil } }

    func key(_ label: String) throws -> Node {
        let keys = keys()
        if let key = keys.first(where: { $0.words == label })
            ?? keys.first(where: { $0.words.hasPrefix(label) })
        {
            return key
        }
        throw Failed("no key \(label) among \(keys.map(\.words)); texts \(texts())")
    }

    func hasKey(_ label: String) -> Bool { keys().contains { $0.words.hasPrefix(label) } }

    /// There is a wide key that records.
    var hasWide: Bool { hasKey("Racked") || hasKey("Done") }

    /// What it says: nothing is racked where there is no rack.
    var wide: String { hasKey("Racked") ? "Racked" : "Done" }

    /// How often the screen was touched; what is typed on the phone's own keyboard is not counted.
    var touches = 0

    func tap(_ label: String) async throws {
        let key = try key(label)
        guard key.enabled else { throw Failed("\(label) can't be tapped") }
        touches += 1
        key.tap?()
        await settle()
    }

    /// A key that stands on the page by these words read aloud, since many look alike.
    func touch(says words: String) async throws {
        guard let key = keys().first(where: { $0.label == words }) else {
            throw Failed("no key says \(words) among \(keys().map { $0.label ?? $0.words })")
        }
        guard key.enabled else { throw Failed("\(words) can't be tapped") }
        touches += 1
        key.tap?()
        await settle()
    }

    /// A key of a form's line.
    func touch(_ row: String, _ label: String) async throws {
        guard case .form(let form) = presenter.shown.page, let line = form.rows.first(where: { $0.text == row }),
            let key = line.keys.first(where: { $0.label == label })
        else { throw Failed("no \(label) in \(row): \(texts())") }
        try seen(key)
        touches += 1
        presenter.send(.act(key.action))
        await settle()
    }

    /// It stands on the page, to be tapped.
    private func seen(_ key: Key) throws {
        guard keys().contains(where: { $0.label == key.says && $0.enabled }) else {
            throw Failed("\(key.says) does not stand on the page")
        }
    }

    /// What stands in a form's line, typed: its key opens the field, another keeps what is in it.
    func type(in row: String, _ text: String) async throws {
        guard case .form(let form) = presenter.shown.page,
            let field = form.rows.first(where: { $0.text == row })?.field
        else { throw Failed("nothing is typed in \(row): \(texts())") }
        guard keys().contains(where: { $0.label == Words.type(row) }) else { throw Failed("no key opens \(row)") }
        touches += 2
        presenter.send(.write(field: field.id, text: text))
        await settle()
    }

    func hold(_ label: String) async throws {
        guard let hold = try key(label).hold else { throw Failed("nothing behind \(label)") }
        hold()
        await settle()
    }

    func type(_ field: String, _ text: String) async throws {
        let nodes = nodes()
        guard let entry = nodes.first(where: { $0.kind == .field && $0.label == field }) else {
            throw Failed("no field \(field) among \(nodes.filter { $0.kind == .field }.map(\.label))")
        }
        touches += 1
        entry.write?(text)
        guard let keep = nodes.first(where: { $0.label == "Keep: \(field)" }) else { throw Failed("no key") }
        keep.tap?()
        await settle()
    }
}

struct Failed: Error, CustomStringConvertible {
    let description: String
    init(_ description: String) { self.description = description }
}

let checkout: URL = {
    var folder = URL(fileURLWithPath: #filePath)
    for _ in 0..<4 { folder.deleteLastPathComponent() }
    return folder
}()

func demo(_ name: String) throws -> String {
    try String(contentsOf: checkout.appendingPathComponent("core/app/src/engine/demo/\(name)"), encoding: .utf8)
}

/// A test with a phone of its own.
@MainActor class PhoneTests: XCTestCase, @unchecked Sendable {
    private var handsets: [Handset] = []

    func handset(locale: String = "en-GB") throws -> Handset {
        let handset = try Handset(locale: locale)
        handsets.append(handset)
        return handset
    }

    override func tearDown() async throws {
        handsets.forEach { $0.end() }
        handsets = []
    }
}
