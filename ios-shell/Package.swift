// swift-tools-version: 6.0
// The iOS shell: the generated bindings, the presentation in plain Swift, the SwiftUI views over it.
// `check` makes `Generated` and `.build/library` and runs the tests on Linux; on a Mac `xcframework`
// makes `Generated`, and the project of `project.yml` takes `BarwrightViews` in.
import PackageDescription

#if os(Linux)
    // Apple's frameworks are not here: small modules of ours stand for the names that are used.
    let stubs: [Target] = [
        .target(name: "SwiftUI", dependencies: ["UniformTypeIdentifiers"], path: "Stubs/SwiftUI"),
        .target(name: "UIKit", dependencies: ["SwiftUI"], path: "Stubs/UIKit"),
        // As Apple's, from before Swift's concurrency.
        .target(
            name: "UserNotifications", path: "Stubs/UserNotifications",
            swiftSettings: [.swiftLanguageMode(.v5)]),
        .target(name: "AVFAudio", path: "Stubs/AVFAudio"),
        .target(name: "UniformTypeIdentifiers", path: "Stubs/UniformTypeIdentifiers"),
    ]
    let swiftUI: [Target.Dependency] = ["SwiftUI"]
    let platform: [Target] =
        stubs + [
            .target(name: "BarwrightFFI", path: "Generated/BarwrightFFI"),
            .executableTarget(
                name: "BarwrightApp",
                dependencies: [
                    "BarwrightViews", "BarwrightPresentation", "SwiftUI", "UIKit",
                    "UserNotifications", "AVFAudio", "UniformTypeIdentifiers",
                ],
                path: "App/Sources"),
            .testTarget(
                name: "BarwrightShellTests",
                dependencies: [
                    "Barwright", "BarwrightApp", "BarwrightPresentation", "BarwrightViews", "SwiftUI",
                    "UIKit",
                    "UserNotifications",
                ]),
        ]
    let linked: [LinkerSetting] = [.linkedLibrary("barwright_bindings")]
#else
    let swiftUI: [Target.Dependency] = []
    let platform: [Target] = [
        .binaryTarget(name: "BarwrightFFI", path: "Generated/BarwrightFFI.xcframework")
    ]
    let linked: [LinkerSetting] = []
#endif

let package = Package(
    name: "BarwrightShell",
    platforms: [.iOS(.v17)],
    products: [
        .library(name: "BarwrightViews", targets: ["BarwrightPresentation", "BarwrightViews"])
    ],
    targets: [
        .target(
            name: "Barwright", dependencies: ["BarwrightFFI"], path: "Generated/Barwright",
            linkerSettings: linked),
        .target(name: "BarwrightPresentation", dependencies: ["Barwright"]),
        .target(
            name: "BarwrightViews", dependencies: ["BarwrightPresentation"] + swiftUI),
    ] + platform,
    swiftLanguageModes: [.v6]
)
