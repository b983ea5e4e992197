import Foundation
import XCTest

/// Views lay out and hand on: none imports the bindings, none computes, compares or decides by
/// numbers. Read from their sources.
final class HouseTests: XCTestCase {
    private func sources(_ folder: String) throws -> [(name: String, text: String)] {
        let folder = checkout.appendingPathComponent("ios-shell/\(folder)")
        let names = try FileManager.default.subpathsOfDirectory(atPath: folder.path)
            .filter { $0.hasSuffix(".swift") }.sorted()
        XCTAssertFalse(names.isEmpty, folder.path)
        return try names.map {
            ($0, try String(contentsOf: folder.appendingPathComponent($0), encoding: .utf8))
        }
    }

    func testViewsImportNoBindingsAndComputeNothing() throws {
        for file in try sources("Sources/BarwrightViews") {
            XCTAssertEqual(faults(inView: file.text), [], file.name)
        }
    }

    func testTheAppImportsNoBindings() throws {
        for file in try sources("App/Sources") {
            XCTAssertEqual(
                imports(code(file.text)).filter { $0.hasPrefix("Barwright") }.filter {
                    $0 != "BarwrightPresentation" && $0 != "BarwrightViews"
                }, [], file.name)
        }
    }

    func testThePresentationIsPlainSwift() throws {
        for file in try sources("Sources/BarwrightPresentation") {
            let foreign = imports(code(file.text)).filter { !["Barwright", "Foundation"].contains($0) }
            XCTAssertEqual(foreign, [], file.name)
        }
    }

    /// One look at a value that may be missing is enough: nothing of ours is forced.
    func testNothingIsForced() throws {
        for folder in ["Sources", "App/Sources", "Tests"] {
            for file in try sources(folder) {
                let text = code(file.text)
                for pattern in [#"[\w\)\]>?]!(?!=)"#, #"\btry!"#, #"\bas!"#] {
                    XCTAssertNil(
                        text.range(of: pattern, options: .regularExpression).map { String(text[$0]) },
                        "\(file.name): \(pattern)")
                }
            }
        }
    }

    /// The check itself can fail: each of these is a way for a view to decide something.
    func testEveryWrongViewIsFound() {
        let fine = """
            import SwiftUI
            import BarwrightPresentation
            /// a - b, 1 + 1
            struct Fine: View {
                let row: Row
                var body: some View {
                    if row.warns, !row.keys.isEmpty { Text("1 + 1 < 3, \\(row.text)").padding(12).rotate(-90) }
                    ForEach(row.keys, id: \\.id) { key in KeyView(key: key, send: send) }
                }
            }
            """
        XCTAssertEqual(faults(inView: fine), [])
        for wrong in [
            "import Barwright", "@testable import Barwright", "import BarwrightFFI", "import Foundation",
            "let a = b + c", "let a = b+c", "let left = total - done", "let a = b*2", "x += 1",
            "if a < b {}", "if a >= b {}", "if rest.leftMs == 0 {}", "if a != b {}",
            "if done && planned {}", "if done || planned {}", "let all = rows.count", "Int(text)",
            "CGFloat(row.depth)", "rows.filter { $0.done }", "rows.sorted()", "rows.reduce(0)", "min(a, b)",
            "Text(\"\\(planned - done)\")", "for n in 0..<3 {}", "a % b", "a / b", "-left", "rows[0]",
            "engine.dispatch(intent: intent, reading: reading)", "Date()",
        ] {
            XCTAssertFalse(faults(inView: fine + "\n" + wrong).isEmpty, "not found: \(wrong)")
        }
    }

    // MARK: Reading Swift

    private func faults(inView source: String) -> [String] {
        let text = code(source)
        let allowed: Set = ["SwiftUI", "BarwrightPresentation"]
        var found = imports(text).filter { !allowed.contains($0) }.map { "imports \($0)" }
        let patterns = [
            // Arithmetic, comparison, ranges and logic between two values; arrows and generics are none.
            #"(?<![<>=!+\-*/%&|])\s(\+|-|\*|/|%|<|>|<=|>=|==|!=|===|!==|&&|\|\||\+=|-=|\*=|/=|&\+|&-|<<|>>)\s"#,
            #"[\w\)\]](\+|\*|/|%|==|!=|&&|\|\||<=|>=)[\w\(\[.]"#,
            #"\.\.[.<]"#,
            // A number is turned only where it is written out.
            #"(?<![\w\)\]>])-\s*[A-Za-z_(]"#, #"[\w\)\]]-[\w\(]"#,
            // Numbers made of others, lists counted, sifted or picked from.
            #"(?<!\.)\b(U?Int\d*|Double|Float|CGFloat|Decimal|min|max|abs|pow|round|floor|ceil|sqrt)\("#,
            #"(?<!\bzone)\.(first|last)\b(?!:)"#,
            #"\.(count|filter|map|compactMap|flatMap|sorted|reduce|contains|enumerated|prefix|suffix|dropFirst|dropLast|rounded|advanced|hasPrefix|hasSuffix|max|min|reversed|zip)\b(?!:)"#,
            #"[\w\)]\[[^\]]*\]"#,
            // The engine and the clock are the presentation's.
            #"\b(Engine|Intent|Reading|Date|Calendar|ContinuousClock|DispatchQueue|Task|Timer)\b"#,
            #"\bdispatch\("#,
        ]
        for pattern in patterns {
            var rest = text[...]
            while let range = rest.range(of: pattern, options: .regularExpression) {
                found.append("\(rest[range].trimmingCharacters(in: .whitespacesAndNewlines))")
                rest = rest[range.upperBound...]
            }
        }
        return found
    }

    private func imports(_ text: String) -> [String] {
        text.split(separator: "\n").compactMap { line in
            let words = line.split(separator: " ")
            guard let at = words.firstIndex(of: "import"), words.count > at + 1 else { return nil }
            return String(words[at + 1])
        }
    }

    /// The source without its comments and the words of its texts; what is put into a text stays.
    private func code(_ source: String) -> String {
        var out = ""
        var rest = source[...]
        func take(_ count: Int = 1) -> Substring {
            let taken = rest.prefix(count)
            rest = rest.dropFirst(count)
            return taken
        }
        /// How many brackets are open within each text that is open.
        var texts: [Int] = []
        while !rest.isEmpty {
            if rest.hasPrefix("//") {
                rest = rest.drop { $0 != "\n" }
            } else if rest.hasPrefix("\"") {
                _ = take()
                out += "\""
                inText()
            } else if rest.hasPrefix(")"), let open = texts.last, open == 0 {
                out += take()
                texts.removeLast()
                inText()
            } else {
                if let open = texts.last {
                    if rest.hasPrefix("(") { texts[texts.count - 1] = open + 1 }
                    if rest.hasPrefix(")") { texts[texts.count - 1] = open - 1 }
                }
                out += take()
            }
        }
        func inText() {
            while !rest.isEmpty {
                if rest.hasPrefix("\\(") {
                    out += take(2)
                    texts.append(0)
                    return
                }
                if rest.hasPrefix("\\") {
                    _ = take(2)
                } else if rest.hasPrefix("\"") || rest.hasPrefix("\n") {
                    out += "\""
                    _ = take()
                    return
                } else {
                    _ = take()
                }
            }
        }
        return out
    }
}

/// What the app asks for and says of itself: no more than the README says.
final class ManifestTests: XCTestCase {
    private func plist(_ name: String) throws -> [String: Any] {
        let data = try Data(contentsOf: checkout.appendingPathComponent("ios-shell/App/\(name)"))
        return try XCTUnwrap(
            PropertyListSerialization.propertyList(from: data, format: nil) as? [String: Any], name)
    }

    /// Every word of the shell's own has its German beside it, with the same places to fill.
    func testTheShellsOwnWordsAreThereInGerman() throws {
        let file = checkout.appendingPathComponent("ios-shell/Sources/BarwrightPresentation/Words.swift")
        let source = try String(contentsOf: file, encoding: .utf8)
        let pattern = try NSRegularExpression(pattern: #"\bword\(\s*"([^"]+)""#)
        let english = pattern.matches(in: source, range: NSRange(source.startIndex..., in: source))
            .compactMap { Range($0.range(at: 1), in: source).map { String(source[$0]) } }
        XCTAssertGreaterThan(english.count, 30)
        let german = try plist("de.lproj/Localizable.strings")
        XCTAssertEqual(Set(german.keys), Set(english))
        for words in english {
            let said = try XCTUnwrap(german[words] as? String, words)
            XCTAssertFalse(said.isEmpty, words)
            XCTAssertEqual(
                said.components(separatedBy: "%@").count, words.components(separatedBy: "%@").count, words)
            if words != "Plan" { XCTAssertNotEqual(said, words) }
        }
        XCTAssertEqual(try plist("Info.plist")["CFBundleLocalizations"] as? [String], ["en", "de"])
    }

    func testNothingLeavesThePhone() throws {
        let privacy = try plist("PrivacyInfo.xcprivacy")
        XCTAssertEqual(privacy["NSPrivacyTracking"] as? Bool, false)
        XCTAssertEqual((privacy["NSPrivacyTrackingDomains"] as? [Any])?.count, 0)
        XCTAssertEqual((privacy["NSPrivacyCollectedDataTypes"] as? [Any])?.count, 0)
        let info = try plist("Info.plist")
        // No camera, no place, no contacts, no network of its own, nothing in the background.
        XCTAssertEqual(info.keys.filter { $0.hasSuffix("UsageDescription") }, [])
        XCTAssertNil(info["NSAppTransportSecurity"])
        XCTAssertNil(info["UIBackgroundModes"])
    }

    func testFilesCanBeReadAfterTheFirstUnlock() throws {
        let entitlements = try plist("Barwright.entitlements")
        XCTAssertEqual(
            entitlements["com.apple.developer.default-data-protection"] as? String,
            "NSFileProtectionCompleteUntilFirstUserAuthentication")
        XCTAssertEqual(entitlements.count, 2)
    }
}
