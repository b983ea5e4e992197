import Barwright
import Foundation

/// What the core answers: the screen to show and what the device is to do, or that nothing was
/// recorded.
typealias Answered = Result<Answer, EngineError>

/// What is asked of an engine here.
protocol Asked: AnyObject, Sendable {
    func act(action: Action, reading: Reading) throws -> Answer
    func suspend() throws
    func shutDown() throws
    func backUp(path: String) throws -> UInt64
}

extension Engine: Asked {}

/// The one engine of the process, behind one serial queue: calls are taken in order, answers come
/// back on the main queue in the same order. Opens the store at the first call.
///
/// Sendable by that queue: `engine` is touched on it and nowhere else.
public final class Core: @unchecked Sendable {
    private let queue = DispatchQueue(label: "barwright.core", qos: .userInitiated)
    private let open: @Sendable () throws -> any Asked
    private let setRight: @Sendable () throws -> Recovered
    private var engine: (any Asked)?

    /// The store at a path; both are asked for whenever the store is opened.
    public convenience init(
        locale: @escaping @Sendable () -> String, path: @escaping @Sendable () throws -> String
    ) {
        self.init(
            open: { try Engine.open(path: path(), locale: locale()) },
            recover: { try Barwright.recover(path: path(), locale: locale()) })
    }

    init(
        open: @escaping @Sendable () throws -> any Asked,
        recover: @escaping @Sendable () throws -> Recovered
    ) {
        self.open = open
        setRight = recover
    }

    /// Gives the store up and opens it anew, after it failed: tells whether that can be done.
    func opens(then: @escaping @MainActor @Sendable (Bool) -> Void) {
        queue.async {
            self.release()
            let opened = self.asked { _ in }
            DispatchQueue.main.async { MainActor.assumeIsolated { then((try? opened.get()) != nil) } }
        }
    }

    /// Sets a damaged store aside and reads what is good into a new one; refused where nothing is
    /// damaged.
    func recover(then: @escaping @MainActor @Sendable (Result<Recovered, EngineError>) -> Void) {
        queue.async {
            // No engine may have the file.
            self.release()
            let recovered = Self.caught(self.setRight)
            DispatchQueue.main.async { MainActor.assumeIsolated { then(recovered) } }
        }
    }

    /// What a key says.
    func act(
        _ action: Action, at reading: Reading, then: @escaping @MainActor @Sendable (Answered) -> Void
    ) {
        ask(then) { engine in try engine.act(action: action, reading: reading) }
    }

    func dispatch(
        _ intent: Intent, at reading: Reading, then: @escaping @MainActor @Sendable (Answered) -> Void
    ) {
        act(.do(intent: intent, session: nil, then: nil), at: reading, then: then)
    }

    func view(
        _ look: Look, at reading: Reading, then: @escaping @MainActor @Sendable (Answered) -> Void
    ) {
        act(.show(look: look), at: reading, then: then)
    }

    /// Copies the records to a file that is not there yet; answers how many entries they have.
    func backUp(
        to path: String, then: @escaping @MainActor @Sendable (Result<UInt64, EngineError>) -> Void
    ) {
        ask(then) { engine in try engine.backUp(path: path) }
    }

    /// The program leaves the screen: gives the file up until the next call.
    func suspend(then: @escaping @MainActor @Sendable () -> Void) {
        queue.async {
            // What was acknowledged is safe; the next call says what is wrong with the disk.
            try? self.engine?.suspend()
            DispatchQueue.main.async { MainActor.assumeIsolated(then) }
        }
    }

    /// The device's region changed: the next call opens with the new one.
    func reopen() {
        queue.async { self.release() }
    }

    /// The process is about to end: waits until what was asked for is done, hands over a last
    /// reading and gives the file up.
    func end(at reading: Reading) {
        queue.sync {
            _ = try? self.engine?.act(
                action: .do(intent: .wake, session: nil, then: nil), reading: reading)
            self.release()
        }
    }

    private func ask<T: Sendable>(
        _ then: @escaping @MainActor @Sendable (Result<T, EngineError>) -> Void,
        _ call: @escaping @Sendable (any Asked) throws -> T
    ) {
        queue.async {
            let answer = self.asked(call)
            DispatchQueue.main.async { MainActor.assumeIsolated { then(answer) } }
        }
    }

    /// What `call` comes to on the engine, which is opened when it is not.
    private func asked<T>(_ call: (any Asked) throws -> T) -> Result<T, EngineError> {
        Self.caught {
            let engine = try self.engine ?? open()
            self.engine = engine
            return try call(engine)
        }
    }

    private static func caught<T>(_ call: () throws -> T) -> Result<T, EngineError> {
        do {
            return .success(try call())
        } catch let error as EngineError {
            return .failure(error)
        } catch {
            // No folder to keep the store in, or a defect of the bindings'.
            return .failure(.Broken(reason: Words.broken, report: "\(error)"))
        }
    }

    private func release() {
        try? engine?.shutDown()
        engine = nil
    }
}
