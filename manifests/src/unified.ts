import { type FunctionRow, functionTable, NAMESPACE } from '../../addin/src/functions/table.js'
import { definition, iconFile, RIBBON_SIZES } from './definition.js'

/** Functions need the unified manifest's schema of at least this version. */
export const UNIFIED_VERSION = '1.24'

/**
 * The unified manifest (JSON): Excel on Windows from 2501, on Mac from 16.103, and on the web; not perpetual Office.
 * @param base address of the pane's folder, from {@link baseAddress}
 */
export function unifiedManifest(base: URL): object {
  const at = (path: string): string => new URL(path, base).href
  const { id, version, name, provider, shortDescription, fullDescription, accentColor, requirement } =
    definition
  const requirements = {
    scopes: ['workbook'],
    capabilities: [{ name: requirement.name, minVersion: requirement.version }],
  }
  const icons = [16, 32, 80].map((size) => ({ size, url: at(iconFile(size)) }))
  return {
    $schema: `https://developer.microsoft.com/json-schemas/teams/v${UNIFIED_VERSION}/MicrosoftTeams.schema.json`,
    manifestVersion: UNIFIED_VERSION,
    id,
    version,
    name: { short: name, full: `${name}: airtightness tests` },
    description: { short: shortDescription, full: fullDescription },
    developer: {
      name: provider,
      websiteUrl: at('about.html'),
      privacyUrl: at('about.html'),
      termsOfUseUrl: at('about.html'),
    },
    icons: { color: 'color.png', outline: 'outline.png' },
    accentColor,
    localizationInfo: { defaultLanguageTag: 'en-gb' },
    validDomains: [base.host],
    authorization: {
      permissions: { resourceSpecific: [{ name: 'Document.ReadWrite.User', type: 'Delegated' }] },
    },
    extensions: [
      {
        requirements,
        runtimes: [
          {
            id: 'PaneRuntime',
            type: 'general',
            lifetime: 'long',
            code: { page: at('pane.html') },
            actions: [{ id: 'OpenPane', type: 'openPage', view: 'pane' }],
            customFunctions: {
              namespace: { id: NAMESPACE, name: NAMESPACE },
              functions: (functionTable as readonly FunctionRow[]).map(functionEntry),
            },
          },
        ],
        ribbons: [{ contexts: ['default'], tabs: [{ builtInTabId: 'TabHome', groups: [group(icons)] }] }],
      },
    ],
  }
}

function group(icons: { size: number; url: string }[]): object {
  const { group: label, button, buttonTip } = definition
  return {
    id: 'DraughtbookGroup',
    label,
    icons,
    controls: [
      {
        id: 'DraughtbookOpen',
        type: 'button',
        label: button,
        icons,
        supertip: { title: button, description: buttonTip },
        actionId: 'OpenPane',
      },
    ],
  }
}

/** Sizes the XML manifest names too; kept here so that both manifests are checked against one list of files. */
export const unifiedIconFiles = RIBBON_SIZES.map(iconFile)

function functionEntry({ id, description, parameters, spills }: FunctionRow): object {
  return {
    id,
    name: id,
    description: description.slice(0, 128),
    parameters: parameters.map(({ name, description: words, matrix, optional }) => ({
      name,
      description: words.slice(0, 128),
      type: 'any',
      dimensionality: matrix ? 'matrix' : 'scalar',
      ...(optional ? { optional: true } : {}),
    })),
    result: { dimensionality: spills ? 'matrix' : 'scalar' },
    requiresParameterAddress: true,
  }
}
