// swift-tools-version: 6.0
// The Swift runner: the generated bindings and their tests. `bindings/check` runs it, having made
// `Generated` and `.build/library`.
import PackageDescription

let package = Package(
    name: "BarwrightBindings",
    targets: [
        .target(name: "BarwrightFFI", path: "Generated/BarwrightFFI"),
        .target(
            name: "Barwright", dependencies: ["BarwrightFFI"], path: "Generated/Barwright",
            // The library of the tests holds the engine too.
            linkerSettings: [.linkedLibrary("barwright_bindings_testing")]),
        .target(name: "BarwrightTestingFFI", path: "Generated/BarwrightTestingFFI"),
        .target(
            name: "BarwrightTesting", dependencies: ["BarwrightTestingFFI", "Barwright"],
            path: "Generated/BarwrightTesting"),
        .testTarget(name: "BarwrightTests", dependencies: ["Barwright", "BarwrightTesting"]),
    ],
    swiftLanguageModes: [.v6]
)
