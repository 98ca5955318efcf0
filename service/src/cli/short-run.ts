import { config } from 'zod'

// Writing and compiling a checker for each schema pays in a service that checks thousands of records. A command checks
// one, and is done sooner without. It must be set before the first schema is built, so before a command is loaded.
config({ jitless: true })
