import { beforeEach, expect } from 'vitest'

// A test without an assertion cannot fail, so it is an error here.
beforeEach(() => {
  expect.hasAssertions()
})
