import Barwright
import Foundation

/// Holds what is shown, hands taps to the core and carries its effects to the device.
@MainActor
public final class Presenter {
    /// All that is on the screen.
    public private(set) var shown = Shown() {
        didSet {
            if shown != oldValue { onChange?(shown) }
            if shown.word != oldValue.word, let word = shown.word { device.announce(word.text) }
        }
    }
    /// Told of every change of it.
    public var onChange: ((Shown) -> Void)?

    private let core: Core
    private let clocks: any Clocks
    private let device: any Device
    private let said: Said
    private var trail: Trail
    /// The look of the page that is shown; the one asked for may still be on its way.
    private var standing: Look?
    private var screen: Screen?
    private var inFront = false
    /// A file that came before the first screen stood.
    private var handed: String?

    public init(core: Core, clocks: any Clocks, device: any Device, said: Said) {
        self.core = core
        self.clocks = clocks
        self.device = device
        self.said = said
        trail = said.trail.flatMap(Trail.init) ?? Trail()
    }

    // MARK: Taps

    /// What a view hands over.
    public func send(_ tap: Tap) {
        switch tap {
        case .act(.do(let intent, let session, let then)):
            act(.do(intent: intent, session: session, then: then))
        case .act(.show(let look)), .go(let look): go(look)
        case .write(let field, let text): dispatch(.write(field: field, text: text))
        case .places:
            shown.page = .places(PlacesPage(speaks: said.speaks))
            shown.back = true
            device.lookAgain(after: nil)
        case .back: back()
        case .readAloud:
            if let screen { device.speak(screen.aloud) }
            refresh()
        case .pick(let kind): device.pick(kind)
        case .copy: copy()
        case .handOn(let name, let text): handOn(name, text)
        case .speaks(let on):
            said.speaks = on
            if case .places = shown.page { shown.page = .places(PlacesPage(speaks: on)) }
        case .meant:
            let meant = shown.word?.meant
            shown.word = nil
            switch meant {
            case .act(let action): act(action)
            case .recover: recover()
            case nil: break
            }
        case .understood:
            shown.word = nil
            // Before the first screen there is nothing to go back to: try again.
            if shown.page == nil { comesToFront() }
        }
    }

    private func dispatch(_ intent: Intent) {
        act(.do(intent: intent, session: nil, then: nil))
    }

    private func act(_ action: Action) {
        let reading = clocks.read()
        core.act(action, at: reading) { answer in
            switch answer {
            case .success(let answer):
                self.carryOut(answer, at: reading)
                self.arrive(answer, at: reading)
            case .failure(let error): self.refused(error)
            }
        }
    }

    /// A tap's answer: what it shows is where the lifter is now.
    private func arrive(_ answer: Answer, at reading: Reading) {
        let now = answer.look
        if !now.isSame(as: trail.look) {
            let today = Look.today(session: nil, minutes: nil)
            trail.past = now.isSame(as: today) ? [] : [today]
        }
        show(answer, at: reading)
    }

    private func refused(_ error: EngineError) {
        switch error {
        case .Refused(_, let reason, let yes):
            shown.word = yes.map { Word(asking: reason, meant: $0) } ?? Word(reason)
        case .Storage(let reason, let keptAt):
            say([reason, keptAt])
            core.opens { opens in
                // Whether its damage can be mended is found out when it is asked for.
                if !opens, let word = self.shown.word { self.shown.word = Word(recovering: word.text) }
            }
        case .NewerFile(let reason), .Closed(let reason): say([reason])
        case .Broken(let reason, let report): say([reason, report])
        }
    }

    private func say(_ lines: [String]) {
        shown.word = Word(lines.filter { !$0.isEmpty }.joined(separator: "\n"))
    }

    // MARK: Places

    private func go(_ look: Look) {
        if let from = trail.look, !from.isSame(as: look) { trail.past.append(from) }
        trail.look = look
        view(look)
    }

    private func back() {
        if case .places = shown.page {
            refresh()
        } else if case .floor(let page) = shown.page, let panel = page.floor.panel {
            send(.act(panel.close.action))
        } else if let to = trail.past.popLast() {
            trail.look = to
            view(to)
        }
    }

    private func refresh() {
        if let look = trail.look { view(look) }
    }

    private func view(_ wanted: Look) {
        let reading = clocks.read()
        core.view(wanted, at: reading) { answer in
            // A later tap may have gone elsewhere meanwhile; its own answer follows.
            guard self.trail.look == wanted else { return }
            switch answer {
            // The floor without a session is today's sheet: then that is where we are.
            case .success(let answer): self.show(answer, at: reading)
            case .failure(let error):
                // There is no such screen: stay where we were.
                self.trail.look = self.standing
                if let from = self.trail.past.last, from == self.standing { self.trail.past.removeLast() }
                self.refused(error)
            }
        }
    }

    // MARK: Screens

    private func show(_ answer: Answer, at reading: Reading, answered: Bool = true) {
        screen = answer.screen
        trail.look = answer.look
        standing = answer.look
        var next = shown
        next.page = answer.screen.page(at: reading)
        next.back = !trail.past.isEmpty
        // A word that waits for its answer outlasts the figures.
        if answered { next.word = nil }
        shown = next
        waitForChange(answer.wakesAt.map { $0 - reading.wallMs })
    }

    /// Asks to be called once, when the screen changes by itself. A rest is counted by the system,
    /// so that nothing of ours runs before it ends. Only while it is looked at.
    private func waitForChange(_ wakesIn: Int64?) {
        guard inFront else {
            device.lookAgain(after: nil)
            return
        }
        guard case .floor(let floor) = screen, floor.thumb.figure?.runs != true else {
            device.lookAgain(after: wakesIn)
            return
        }
        device.lookAgain(after: floor.rest.flatMap { $0.over ? nil : $0.leftMs })
    }

    /// What was asked for by `Device.lookAgain` has come.
    public func lookAgain() {
        guard inFront, let wanted = trail.look else { return }
        if case .places = shown.page { return }
        let rested = screen?.floor?.rest.map { !$0.over } ?? false
        let reading = clocks.read()
        core.view(wanted, at: reading) { answer in
            guard self.trail.look == wanted, case .success(let answer) = answer else { return }
            if case .places = self.shown.page { return }
            if rested, let floor = answer.screen.floor, let rest = floor.rest, rest.over {
                self.device.feel(.over)
                // Said once, when it ends; never while it counts.
                self.device.announce("\(rest.label) \(rest.text)")
                // For who wants it aloud: that the rest is over, and the next call.
                if self.said.speaks { self.device.speak(floor.aloud) }
            }
            self.show(answer, at: reading, answered: false)
        }
    }

    // MARK: Effects

    private func carryOut(_ answer: Answer, at reading: Reading) {
        for effect in answer.effects {
            switch effect {
            case .ringAt(let wallMs, let bootMs, let text, let next):
                let ring = RingAt(wallMs: wallMs, bootMs: bootMs, text: text, next: next)
                // By the clocks as they are now: the answer may have waited.
                device.notify(Notice.ring(ring, floor: answer.screen.floor, at: clocks.read()))
            case .cancelRing: device.withdrawNotices()
            case .haptic(let kind): device.feel(kind == .recorded ? .recorded : .changed)
            case .keepAwake(let on): device.keepAwake(on)
            }
        }
    }

    /// The device will show no notification: said once, at the first rest that wants one.
    public func noticesAreOff() {
        if shown.word == nil, said.first("no notices") { shown.word = Word(Words.noNotices) }
    }

    /// A key of a notification: records, and stays where the lifter is. `then` is called when all is
    /// on disk.
    public func noticeTapped(key id: String, part: String?, then: @escaping @MainActor @Sendable () -> Void) {
        let reading = clocks.read()
        core.view(.floor(draft: Draft()), at: reading) { answer in
            guard case .success(let answer) = answer, let floor = answer.screen.floor,
                let key = Notice.key(id, part: part, on: floor), case .do = key.action
            else {
                self.wake { self.giveUp(then: then) }
                return
            }
            self.elsewhere(key.action, at: reading, then: then)
        }
    }

    private func elsewhere(
        _ action: Action, at reading: Reading, then: @escaping @MainActor @Sendable () -> Void
    ) {
        core.act(action, at: reading) { answer in
            switch answer {
            case .success(let answer):
                self.carryOut(answer, at: reading)
                self.refreshFloor()
            case .failure(let error): self.refused(error)
            }
            self.giveUp(then: then)
        }
    }

    /// In the background the file is given up again when all is done.
    private func giveUp(then: @escaping @MainActor @Sendable () -> Void) {
        if inFront { then() } else { core.suspend(then: then) }
    }

    /// What was entered on the floor belonged to the set before.
    private func refreshFloor() {
        if case .floor = trail.look { trail.look = .floor(draft: Draft()) }
        if inFront { refreshPage() }
    }

    /// Looks again where we are; the places are the shell's own.
    private func refreshPage() {
        if case .places = shown.page { return }
        refresh()
    }

    // MARK: The life of the process

    /// The program came to the front: the core looks at the time, and says what stands.
    public func comesToFront() {
        inFront = true
        let reading = clocks.read()
        core.dispatch(.wake, at: reading) { answer in
            switch answer {
            case .success(let answer):
                self.carryOut(answer, at: reading)
                if let handed = self.handed {
                    self.handed = nil
                    self.arrive(answer, at: reading)
                    self.go(.plan(text: handed, week: nil))
                } else if self.trail.look == nil {
                    self.arrive(answer, at: reading)
                } else {
                    self.refresh()
                }
            case .failure(let error): self.refused(error)
            }
        }
    }

    /// The program leaves the screen and may be ended without a word: the core gets a last reading,
    /// the ring is set anew, and the file is given up. `then` is called when that is done.
    public func leaves(then: @escaping @MainActor @Sendable () -> Void) {
        inFront = false
        device.lookAgain(after: nil)
        said.trail = trail.data
        wake {}
        core.suspend(then: then)
    }

    /// A clock or time zone was changed: the core gets a reading, the ring is set anew.
    public func clocksChanged() {
        wake { if self.inFront { self.refreshPage() } }
    }

    /// The device's region changed: numbers are written in another way from the next screen on.
    public func regionChanged() {
        core.reopen()
        if inFront { refreshPage() }
    }

    /// The process is about to end.
    public func ends() {
        said.trail = trail.data
        core.end(at: clocks.read())
    }

    private func wake(then: @escaping @MainActor @Sendable () -> Void) {
        let reading = clocks.read()
        core.dispatch(.wake, at: reading) { answer in
            // With no word: nobody is looking, and the next tap says what is wrong.
            if case .success(let answer) = answer { self.carryOut(answer, at: reading) }
            then()
        }
    }

    private func recover() {
        core.recover { recovered in
            switch recovered {
            case .success(let recovered):
                let reading = self.clocks.read()
                self.core.dispatch(.wake, at: reading) { answer in
                    if case .success(let answer) = answer {
                        self.carryOut(answer, at: reading)
                        self.arrive(answer, at: reading)
                    }
                    self.say([recovered.reason])
                }
            case .failure(let error): self.refused(error)
            }
        }
    }

    // MARK: Files

    /// A checked copy of the records, offered to whoever the lifter chooses.
    private func copy() {
        guard let path = Store.copy(in: FileManager.default.temporaryDirectory) else {
            shown.word = Word(Words.noCopy)
            return
        }
        core.backUp(to: path) { copied in
            switch copied {
            case .success: self.device.share(path: path, mediaType: "application/vnd.sqlite3")
            case .failure(let error): self.refused(error)
            }
        }
        refresh()
    }

    /// What was made by hand, as a file.
    private func handOn(_ name: String, _ text: String) {
        guard let path = Store.copy(in: FileManager.default.temporaryDirectory, named: name),
            (try? text.write(toFile: path, atomically: true, encoding: .utf8)) != nil
        else {
            shown.word = Word(Words.noCopy)
            return
        }
        device.share(path: path, mediaType: "text/plain")
    }

    /// A file was chosen or handed over by another app; nil for one that could not be read.
    public func picked(_ kind: FileKind, _ data: Data?) {
        // No further than any file of ours could go; the core says when it is too long.
        guard let data, let text = String(data: data.prefix(Self.mostBytes), encoding: .utf8) else {
            shown.word = Word(Words.unreadableFile)
            return
        }
        switch kind {
        case .gym: dispatch(.addGym(text: text))
        case .plan where shown.page == nil: handed = text
        case .plan: go(.plan(text: text, week: nil))
        }
    }

    private static let mostBytes = 17 << 20
}

extension Look {
    /// The same screen, whatever of it is looked at.
    fileprivate func isSame(as other: Look?) -> Bool {
        switch (self, other) {
        case (.today, .today), (.floor, .floor), (.tally, .tally), (.weeks, .weeks), (.lift, .lift),
            (.balance, .balance), (.equipment, .equipment), (.care, .care), (.plan, .plan),
            (.form, .form), (.anew, .anew):
            true
        case (.today, _), (.floor, _), (.tally, _), (.weeks, _), (.lift, _), (.balance, _),
            (.equipment, _), (.care, _), (.plan, _), (.form, _),
            (.anew, _):
            false
        }
    }
}

extension Screen {
    fileprivate var floor: FloorScreen? {
        if case .floor(let floor) = self { floor } else { nil }
    }

    fileprivate func page(at reading: Reading) -> Page {
        switch self {
        case .today(let today): .today(today)
        case .floor(let floor):
            .floor(
                FloorPage(
                    floor: floor, countdown: floor.rest.map { Countdown($0, at: reading) }))
        case .tally(let tally): .tally(tally)
        case .weeks(let weeks): .weeks(weeks)
        case .lift(let lift): .lift(lift)
        case .balance(let balance): .balance(balance)
        case .equipment(let equipment): .equipment(equipment)
        case .care(let care): .care(care)
        case .plan(let plan): .plan(plan)
        case .form(let form): .form(form)
        case .notShown(let notShown): .notShown(notShown)
        }
    }

    fileprivate var aloud: String {
        switch self {
        case .today(let today): today.aloud
        case .floor(let floor): floor.aloud
        case .tally(let tally): tally.aloud
        case .weeks(let weeks): weeks.aloud
        case .lift(let lift): lift.aloud
        case .balance(let balance): balance.aloud
        case .equipment(let equipment): equipment.aloud
        case .care(let care): care.aloud
        case .plan(let plan): plan.aloud
        case .form(let form): form.aloud
        case .notShown(let notShown): notShown.aloud
        }
    }
}
