/** The little of Eleventy that is used: the package ships no types of its own. */
declare module '@11ty/eleventy' {
  export interface TransformScope {
    readonly page: { readonly url: string | false };
  }
  export interface EleventyConfiguration {
    addTemplate(path: string, content: string, data: object): void;
    addTransform(
      name: string,
      transform: (this: TransformScope, content: string) => string | Promise<string>,
    ): void;
    addPlugin<O>(plugin: (configuration: EleventyConfiguration, options: O) => void, options: O): void;
    /** Timings of what a configuration adds. */
    readonly benchmarks: { readonly config: { setMinimumThresholdPercent(percent: number): void } };
    setTemplateFormats(formats: readonly string[]): void;
    setUseGitIgnore(use: boolean): void;
  }
  export interface EleventyOptions {
    readonly quietMode?: boolean;
    readonly configPath?: string | false;
    readonly config?: (configuration: EleventyConfiguration) => void;
  }
  export default class Eleventy {
    constructor(input: string, output: string, options?: EleventyOptions);
    init(): Promise<void>;
    write(): Promise<unknown>;
    disableLogger(): void;
  }
}
