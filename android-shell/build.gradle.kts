plugins {
    alias(libs.plugins.android)
    alias(libs.plugins.kotlin)
}

// Beside what Maven makes, so that one folder is ignored.
layout.buildDirectory = file("target/gradle")

val checkout = rootDir.resolve("..")
val coreKotlin = file("target/gradle/core/kotlin")
val coreLibraries = file("target/gradle/core/jniLibs")

/** The Kotlin that calls the core, made from the Rust as it stands. */
val coreBindings by tasks.registering(Exec::class) {
    workingDir(checkout)
    commandLine("bindings/generate", "kotlin", coreKotlin.path)
    // Cargo knows what has changed.
    outputs.upToDateWhen { false }
}

/** The core itself, for each kind of processor, by the NDK. */
val coreLibrary by tasks.registering(Exec::class) {
    workingDir(checkout)
    commandLine(
        "cargo", "ndk",
        "-t", "arm64-v8a", "-t", "armeabi-v7a", "-t", "x86_64",
        "--platform", "26",
        "-o", coreLibraries.path,
        "build", "--locked", "--profile", "phone", "-p", "barwright-bindings",
    )
    outputs.upToDateWhen { false }
    // Both call Cargo, which would wait for itself.
    mustRunAfter(coreBindings)
}

android {
    namespace = "barwright.android"
    compileSdk = 34

    defaultConfig {
        applicationId = "barwright.android"
        minSdk = 26
        targetSdk = 34
        versionCode = 1
        versionName = "0.1.0"
    }

    buildTypes {
        release {
            isMinifyEnabled = true
            isShrinkResources = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "proguard-rules.pro")
        }
    }

    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }

    sourceSets.named("main") {
        kotlin.srcDir(coreKotlin)
        jniLibs.srcDir(coreLibraries)
    }
    // The tests need stand-ins for a few types and the core built for this machine: `check` runs them.
    sourceSets.named("test") {
        java.setSrcDirs(emptyList<String>())
        kotlin.setSrcDirs(emptyList<String>())
    }
}

kotlin {
    jvmToolchain(17)
    compilerOptions {
        allWarningsAsErrors = true
        // minSdk 26: the old way beside the new one.
        freeCompilerArgs.addAll("-Xwarning-level=DEPRECATION:disabled", "-Xwarning-level=OVERRIDE_DEPRECATION:disabled")
    }
}

tasks.named("preBuild") { dependsOn(coreBindings, coreLibrary) }

dependencies {
    implementation(variantOf(libs.jna) { artifactType("aar") })
}
