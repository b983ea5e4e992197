/// <reference types="vite/client" />

interface ImportMetaEnv {
    /** The build, by what is in it. */
    readonly VITE_BUILD?: string;
}
