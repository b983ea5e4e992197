package barwright.android

import android.Manifest
import android.app.Activity
import android.app.NotificationManager
import android.content.Intent as Call
import android.content.pm.PackageManager
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.provider.Settings
import android.util.TypedValue
import android.view.View
import android.view.ViewGroup
import android.view.WindowManager
import android.widget.FrameLayout
import android.widget.LinearLayout
import barwright.android.screen.BalanceView
import barwright.android.screen.Banner
import barwright.android.screen.CareView
import barwright.android.screen.EquipmentView
import barwright.android.screen.FormView
import barwright.android.screen.FloorView
import barwright.android.screen.LiftView
import barwright.android.screen.NotShownView
import barwright.android.screen.Places
import barwright.android.screen.PlanView
import barwright.android.screen.TallyView
import barwright.android.screen.TodayView
import barwright.android.screen.WeeksView
import barwright.android.view.Beside
import barwright.android.view.Hands
import barwright.android.view.KeyView
import barwright.android.view.MID
import barwright.android.view.SMALL
import barwright.android.view.SMALL_TARGET
import barwright.android.view.Style
import barwright.android.view.put
import barwright.android.view.show
import barwright.core.Action
import barwright.core.EngineException
import barwright.core.Intent
import barwright.core.Look
import barwright.core.Screen

/** The one window: shows the screen that the core answers, and hands it what is tapped. */
class MainActivity : Activity(), Hands, Places.Doors, Files.Then {
    private val style by lazy { Style(this) }
    private val ticks = Handler(Looper.getMainLooper())
    private val past = ArrayDeque<Look>()
    private var look: Look? = null

    /** The look of the screen that is shown; the one asked for may still be on its way. */
    private var shown: Look? = null
    private var screen: Screen? = null
    private var started = false

    /** What another app handed over, until the screen stands. */
    private var handed: Call? = null

    private val title by lazy { style.text(MID, bold = true) }
    override val files by lazy { Files(this, this) }
    private val banner by lazy { Banner(style, this) }
    private val host by lazy { FrameLayout(this) }
    private val places by lazy { Places(this, this, this) }
    private val today by lazy { TodayView(this, this, files::openPlan) }
    private val floor by lazy { FloorView(this, this) }
    private val tally by lazy { TallyView(this, this) }
    private val weeks by lazy { WeeksView(this, this) }
    private val lift by lazy { LiftView(this, this) }
    private val balance by lazy { BalanceView(this, this) }
    private val equipment by lazy { EquipmentView(this, this, files::openGym, files::handOn) }
    private val care by lazy { CareView(this, this) }
    private val form by lazy { FormView(this, this, files::openPlan, files::handOn) }
    private val plan by lazy { PlanView(this, this, files::openPlan) }
    private val notShown by lazy { NotShownView(this, this) }

    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        if (Build.VERSION.SDK_INT >= 28) title.isAccessibilityHeading = true
        val go = KeyView(style, this, SMALL_TARGET).apply { own(getString(R.string.places)) { open(places, getString(R.string.places_title)) } }
        val head = style.column().apply {
            setPadding(style.dp(16), style.dp(4), style.dp(16), style.dp(4))
            put(Beside(style, style.column().apply { put(title) }, go))
        }
        val root = style.column()
        root.setBackgroundColor(style.ground)
        root.addView(head)
        root.addView(banner)
        root.addView(host, LinearLayout.LayoutParams(ViewGroup.LayoutParams.MATCH_PARENT, 0, 1f))
        setContentView(root)
        savedInstanceState?.getBundle(LOOK)?.let { look = LookBundle.read(it) }
        savedInstanceState?.let { saved ->
            val depth = saved.getInt(DEPTH)
            for (at in 0 until depth) saved.getBundle("$LOOK $at")?.let(LookBundle::read)?.let(past::addLast)
        }
        if (savedInstanceState == null) handed = intent
    }

    override fun onNewIntent(intent: Call) {
        super.onNewIntent(intent)
        if (started) files.opened(intent) else handed = intent
    }

    override fun onStart() {
        super.onStart()
        started = true
        app.effects.ring.inFront = true
        app.effects.onAwake = ::keepAwake
        app.core.onElsewhere = { if (look is Look.Floor) go(Places.FLOOR) else refresh() }
        keepAwake(app.effects.awake)
        // The program came to the front: the core looks at the time, and says what stands.
        app.core.dispatch(Intent.Wake) { answer ->
            val wanted = look
            if (wanted == null || answer is Answer.Not) arrive(answer) else view(wanted)
            handed?.let(files::opened)
            handed = null
        }
    }

    override fun onStop() {
        super.onStop()
        started = false
        ticks.removeCallbacksAndMessages(null)
        app.effects.ring.inFront = false
        app.effects.onAwake = null
        app.core.onElsewhere = null
        app.core.suspend()
    }

    override fun onSaveInstanceState(outState: Bundle) {
        super.onSaveInstanceState(outState)
        look?.let { outState.putBundle(LOOK, LookBundle.of(it)) }
        // A saved state has little room: only the screen in front keeps a whole file's text.
        past.forEachIndexed { at, look ->
            outState.putBundle("$LOOK $at", LookBundle.of(if (look is Look.Plan) look.copy(text = null) else look))
        }
        outState.putInt(DEPTH, past.size)
    }

    // Taps

    override fun tap(action: Action) = when (action) {
        is Action.Do -> act(action)
        is Action.Show -> go(action.look)
    }

    override fun write(field: String, text: String) = hand(Intent.Write(field, text))

    override fun hand(intent: Intent) = act(Action.Do(intent))

    override fun say(words: String) = banner.say(words)

    override fun said(why: EngineException) = refused(why)

    private fun act(action: Action) = app.core.act(action, then = ::arrive)

    /** A tap's answer: the screen to show is where the lifter is now. */
    private fun arrive(answer: Answer): Unit = when (answer) {
        is Answer.Shown -> {
            if (!same(answer.look, look)) {
                past.clear()
                if (answer.look !is Look.Today) past.addLast(Look.Today(null, null))
            }
            show(answer)
        }
        is Answer.Not -> refused(answer.why)
    }

    private fun refused(why: EngineException): Unit = when (why) {
        is EngineException.Refused -> {
            val yes = why.ask
            if (yes == null) banner.say(why.reason)
            else banner.say(why.reason, R.string.load_anyway, R.string.back) { tap(yes) }
        }
        is EngineException.Storage -> {
            val words = listOf(why.reason, why.keptAt).filter { it.isNotEmpty() }.joinToString("\n")
            // With no screen yet the file itself may be at fault: the core refuses when it is not.
            if (screen == null) banner.say(words, R.string.recover, R.string.not_now, ::recover) else banner.say(words)
        }
        is EngineException.NewerFile -> banner.say(why.reason)
        is EngineException.Closed -> banner.say(why.reason)
        is EngineException.Broken -> banner.say("${why.reason}\n${why.report}")
    }

    private fun recover() = app.core.without({ barwright.core.recover(app.records.path, app.language) }, ::said) { read ->
        app.core.dispatch(Intent.Wake) { answer ->
            arrive(answer)
            if (answer is Answer.Shown) banner.say(read.reason)
        }
    }

    // Places

    override fun go(look: Look) {
        val from = this.look
        if (from != null && !same(from, look)) past.addLast(from)
        if (past.size > MOST_BACK) past.removeFirst()
        this.look = look
        view(look)
    }

    override fun back() = onBackPressed()

    override fun onBackPressed() {
        val panel = (screen as? Screen.Floor)?.floor?.panel
        when {
            host.getChildAt(0) === places -> refresh()
            panel != null -> tap(panel.close.action)
            past.isNotEmpty() -> {
                val to = past.removeLast()
                look = to
                view(to)
            }
            else -> super.onBackPressed()
        }
    }

    override fun readAloud() {
        screen?.let { app.effects.speak(aloud(it)) }
        refresh()
    }

    override var speaks: Boolean
        get() = app.said.speaks
        set(on) {
            app.said.speaks = on
        }

    override var overKeyguard: Boolean
        get() = app.said.overKeyguard
        set(on) {
            app.said.overKeyguard = on
            keepAwake(app.effects.awake)
        }

    private fun refresh() {
        look?.let(::view)
    }

    private fun view(wanted: Look) = app.core.view(wanted) { answer ->
        // A later tap may have gone elsewhere meanwhile; its own answer follows.
        if (look == wanted) {
            when (answer) {
                // The floor without a session is today's sheet: then that is where we are.
                is Answer.Shown -> show(answer)
                is Answer.Not -> {
                    refused(answer.why)
                    // There is no such screen: stay where we were.
                    look = shown
                    if (past.lastOrNull() == shown) past.removeLastOrNull()
                }
            }
        }
    }

    // Screens

    private fun show(answer: Answer.Shown, answered: Boolean = true) {
        val screen = answer.screen
        ticks.removeCallbacksAndMessages(null)
        this.screen = screen
        look = answer.look
        shown = look
        if (answered) banner.clear()
        when (screen) {
            is Screen.Today -> { today.apply(screen.today); open(today, screen.today.title) }
            is Screen.Floor -> { this.floor.apply(screen.floor); open(this.floor, screen.floor.title) }
            is Screen.Tally -> { tally.apply(screen.tally); open(tally, screen.tally.title) }
            is Screen.Weeks -> { weeks.apply(screen.weeks); open(weeks, screen.weeks.title) }
            is Screen.Lift -> { lift.apply(screen.lift); open(lift, screen.lift.title) }
            is Screen.Balance -> { balance.apply(screen.balance); open(balance, screen.balance.title) }
            is Screen.Equipment -> { equipment.apply(screen.equipment); open(equipment, screen.equipment.title) }
            is Screen.Care -> { care.apply(screen.care); open(care, screen.care.title) }
            is Screen.Plan -> { plan.apply(screen.plan); open(plan, screen.plan.title) }
            is Screen.Form -> { form.apply(screen.form); open(form, screen.form.title) }
            is Screen.NotShown -> { notShown.apply(screen.notShown); open(notShown, screen.notShown.title) }
        }
        if (!started) return
        // Once, when the screen changes by itself: only while it is looked at.
        answer.wakesIn?.let { ticks.postDelayed(::tick, it) }
        if ((screen as? Screen.Floor)?.floor?.rest != null) wordOnRest()
    }

    private fun tick() {
        val wanted = look ?: return
        app.core.view(wanted) { answer ->
            if (look == wanted && answer is Answer.Shown && host.getChildAt(0) !== places) {
                // A word that waits for its answer outlasts the figures.
                show(answer, answered = false)
            }
        }
    }

    private fun open(view: View, name: String) {
        if (title.text.toString() != name) title.text = name
        // On the floor the room belongs to what is lifted.
        title.setTextSize(TypedValue.COMPLEX_UNIT_SP, if (view === floor) SMALL else MID)
        if (host.getChildAt(0) === view) return
        host.removeAllViews()
        host.addView(view, FrameLayout.LayoutParams(ViewGroup.LayoutParams.MATCH_PARENT, ViewGroup.LayoutParams.MATCH_PARENT))
        if (Build.VERSION.SDK_INT >= 28) host.accessibilityPaneTitle = name
        setTitle(name)
    }

    private fun same(one: Look?, other: Look?) = one?.javaClass == other?.javaClass

    private fun aloud(screen: Screen): String = when (screen) {
        is Screen.Today -> screen.today.aloud
        is Screen.Floor -> screen.floor.aloud
        is Screen.Tally -> screen.tally.aloud
        is Screen.Weeks -> screen.weeks.aloud
        is Screen.Lift -> screen.lift.aloud
        is Screen.Balance -> screen.balance.aloud
        is Screen.Equipment -> screen.equipment.aloud
        is Screen.Care -> screen.care.aloud
        is Screen.Plan -> screen.plan.aloud
        is Screen.Form -> screen.form.aloud
        is Screen.NotShown -> screen.notShown.aloud
    }

    // The device

    private fun keepAwake(on: Boolean) {
        if (on) window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        else window.clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        val over = on && app.said.overKeyguard
        if (Build.VERSION.SDK_INT >= 27) setShowWhenLocked(over)
        else if (over) window.addFlags(WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED)
        else window.clearFlags(WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED)
    }

    /** At the first rest: ask for what it needs, and say once what is lost without it. */
    private fun wordOnRest() {
        if (banner.visibility == View.VISIBLE) return
        val manager = getSystemService(NotificationManager::class.java)
        val allowed = manager.areNotificationsEnabled()
        when {
            !allowed && Build.VERSION.SDK_INT >= 33 && app.said.first("ask notices") ->
                banner.say(getString(R.string.ask_notices), R.string.allow, R.string.not_now) {
                    requestPermissions(arrayOf(Manifest.permission.POST_NOTIFICATIONS), NOTICES)
                }
            !allowed && app.said.first("lost notices") -> banner.say(getString(R.string.lost_notices))
            !app.effects.ring.exact && app.said.first("lost exact") ->
                banner.say(getString(R.string.lost_exact), R.string.to_settings) {
                    startActivity(Call(Settings.ACTION_REQUEST_SCHEDULE_EXACT_ALARM, Uri.fromParts("package", packageName, null)))
                }
        }
    }

    override fun onRequestPermissionsResult(code: Int, asked: Array<String>, answers: IntArray) {
        if (code != NOTICES) return
        if (answers.firstOrNull() == PackageManager.PERMISSION_GRANTED) {
            // The rest that runs gets its notification now.
            app.core.dispatch(Intent.Wake, elsewhere = true) {}
        } else if (app.said.first("lost notices")) {
            banner.say(getString(R.string.lost_notices))
        }
    }

    override fun onActivityResult(what: Int, result: Int, data: Call?) = files.picked(what, result, data?.data)

    private companion object {
        const val LOOK = "look"
        const val DEPTH = "depth"
        const val NOTICES = 3
        const val MOST_BACK = 16
    }
}
