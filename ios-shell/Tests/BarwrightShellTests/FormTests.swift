import Barwright
import SwiftUI
import XCTest

@testable import BarwrightPresentation

/// What is made by hand, by touch, with the real core.
@MainActor final class FormTests: PhoneTests, @unchecked Sendable {
    private func form(_ phone: Handset) throws -> FormScreen {
        guard case .form(let form) = phone.presenter.shown.page else {
            throw Failed("not on a form: \(phone.texts())")
        }
        return form
    }

    /// Steps the row of a text up.
    private func up(_ phone: Handset, _ text: String) async throws {
        let row = try XCTUnwrap(try form(phone).rows.first { $0.text == text })
        phone.presenter.send(.act(try XCTUnwrap(row.up).action))
        await phone.settle()
    }

    func testAGymIsMadeByTouchAndUsed() async throws {
        let phone = try handset()
        await phone.start()
        phone.presenter.send(.go(.equipment))
        await phone.settle()
        try await phone.tap("New gym, empty, kg")
        try await phone.tap("Long bar")
        try await phone.tap("A small set")
        XCTAssertTrue(phone.sees("20 kg to 167.5 kg, every 2.5 kg"), "\(phone.texts())")
        try await up(phone, "2.5 kg")
        XCTAssertTrue(phone.sees("20 kg to 172.5 kg"), "\(phone.texts())")
        try await phone.tap("Undo")
        XCTAssertTrue(phone.sees("20 kg to 167.5 kg"), "\(phone.texts())")
        try await phone.tap("Use it")
        guard case .equipment(let equipment) = try await phone.ask(.equipment) else {
            throw Failed("no equipment")
        }
        XCTAssertEqual(equipment.title, "My gym")
    }

    func testAMaxIsChangedWithItsLoadsShownFirst() async throws {
        let phone = try handset()
        try await phone.prepare()
        await phone.start()
        phone.presenter.send(.go(.form(of: .maxes, at: "", text: "")))
        await phone.settle()
        let bench = try XCTUnwrap(try form(phone).rows.first { $0.text == "Bench press" })
        let less = try XCTUnwrap(bench.keys.first)
        phone.presenter.send(.act(less.action))
        await phone.settle()
        XCTAssertTrue(phone.sees("92.5 kg, was 97.5 kg"), "\(phone.texts())")
        XCTAssertTrue(phone.sees("Week 1"), "\(phone.texts())")
        try await phone.tap("Take 92.5 kg")
        try await phone.tap("Undo")
        XCTAssertTrue(phone.sees("97.5 kg"), "\(phone.texts())")
    }

    func testWhatIsWrongStandsBesideItsRow() async throws {
        let phone = try handset()
        await phone.start()
        phone.presenter.send(.go(.equipment))
        await phone.settle()
        try await phone.tap("New gym, full, kg")
        let plate = try XCTUnwrap(try form(phone).rows.first { $0.text == "25 kg" })
        let field = try XCTUnwrap(plate.field)
        phone.presenter.send(.write(field: field.id, text: "many"))
        await phone.settle()
        let wrong = try XCTUnwrap(try form(phone).rows.first { $0.text == "25 kg" })
        XCTAssertEqual(wrong.faults.count, 1)
        XCTAssertTrue(phone.sees(wrong.faults[0]), "\(phone.texts())")
    }
}
