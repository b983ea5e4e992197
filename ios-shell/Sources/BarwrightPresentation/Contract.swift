import Barwright

// The names of the contract that the app above may use: it takes them from here and never imports
// the bindings, so that nothing but the presentation can call the engine.

public typealias Action = Barwright.Action
public typealias BalanceScreen = Barwright.BalanceScreen
public typealias BarZone = Barwright.BarZone
public typealias CallZone = Barwright.CallZone
public typealias CareScreen = Barwright.CareScreen
public typealias Chart = Barwright.Chart
public typealias EffortKey = Barwright.EffortKey
public typealias EquipmentScreen = Barwright.EquipmentScreen
public typealias Field = Barwright.Field
public typealias Figure = Barwright.Figure
public typealias FileFault = Barwright.FileFault
public typealias FloorScreen = Barwright.FloorScreen
public typealias FormFile = Barwright.FormFile
public typealias FormRow = Barwright.FormRow
public typealias FormScreen = Barwright.FormScreen
public typealias Key = Barwright.Key
public typealias LiftScreen = Barwright.LiftScreen
public typealias Look = Barwright.Look
public typealias MuscleBar = Barwright.MuscleBar
public typealias NotShownScreen = Barwright.NotShownScreen
public typealias Panel = Barwright.Panel
public typealias PlanScreen = Barwright.PlanScreen
public typealias Row = Barwright.Row
public typealias RunningRest = Barwright.RunningRest
public typealias TallyScreen = Barwright.TallyScreen
public typealias ThumbZone = Barwright.ThumbZone
public typealias TodayScreen = Barwright.TodayScreen
public typealias WeekOfPlan = Barwright.WeekOfPlan
public typealias WeeksScreen = Barwright.WeeksScreen
