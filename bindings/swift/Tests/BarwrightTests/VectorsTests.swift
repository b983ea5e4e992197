import Barwright
import BarwrightTesting
import Foundation
import XCTest

/// Every scripted session of `tests/vectors`, on disk: whole answers are compared.
final class VectorsTests: XCTestCase {
    func testEveryScriptIsAnsweredAsWritten() throws {
        var checkout = URL(fileURLWithPath: #filePath)
        for _ in 0..<5 { checkout.deleteLastPathComponent() }
        let folder = checkout.appendingPathComponent("tests/vectors")
        let names = try FileManager.default.subpathsOfDirectory(atPath: folder.path)
            .filter { $0.hasSuffix(".json") }.sorted()
        XCTAssertFalse(names.isEmpty)
        for name in names {
            let json = try String(
                contentsOf: folder.appendingPathComponent(name), encoding: .utf8)
            try replay(scriptedSession(json: json), name: name)
        }
        // One test here, but the summary counts scripts.
        print("vectors replayed: \(names.count)")
    }

    private func replay(_ session: ScriptedSession, name: String) throws {
        let path = try freshPath()
        var engine: Engine? = nil
        for step in session.steps {
            if engine == nil { engine = try Engine.open(path: path, locale: session.locale) }
            var answer = ""
            do {
                answer = try ask(&engine, step.ask)
            } catch let error as EngineError {
                answer = try errorToJson(error: error)
            }
            XCTAssertEqual(answer, step.expected, "\(name), step “\(step.name)”")
        }
        try engine?.shutDown()
    }

    private func ask(_ engine: inout Engine?, _ ask: Ask) throws -> String {
        switch ask {
        case .dispatch(let intent, let reading):
            try answerToJson(answer: XCTUnwrap(engine).dispatch(intent: intent, reading: reading))
        case .act(let action, let reading):
            try answerToJson(answer: XCTUnwrap(engine).act(action: action, reading: reading))
        case .view(let look, let reading):
            try answerToJson(answer: XCTUnwrap(engine).view(look: look, reading: reading))
        case .suspend:
            try suspended(XCTUnwrap(engine))
        case .kill:
            killed(&engine)
        }
    }

    private func suspended(_ engine: Engine) throws -> String {
        try engine.suspend()
        return ""
    }

    /// Nothing else holds it: its file is free again.
    private func killed(_ engine: inout Engine?) -> String {
        engine = nil
        return ""
    }
}
