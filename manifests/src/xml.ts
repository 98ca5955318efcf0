import { NAMESPACE } from '../../addin/src/functions/table.js'
import { definition, iconFile, RIBBON_SIZES } from './definition.js'

/**
 * The add-in-only manifest (XML), which every Excel takes.
 * @param base address of the pane's folder, from {@link baseAddress}
 */
export function xmlManifest(base: URL): string {
  const at = (path: string): string => escapeXml(new URL(path, base).href)
  const { id, version, name, provider, shortDescription, group, button, buttonTip, requirement } = definition
  const icons = RIBBON_SIZES.map((size) => `<bt:Image size="${size}" resid="Icon.${size}"/>`).join('')
  const images = RIBBON_SIZES.map(
    (size) => `<bt:Image id="Icon.${size}" DefaultValue="${at(iconFile(size))}"/>`,
  )
  return `<?xml version="1.0" encoding="UTF-8"?>
<OfficeApp xmlns="http://schemas.microsoft.com/office/appforoffice/1.1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:bt="http://schemas.microsoft.com/office/officeappbasictypes/1.0" xmlns:ov="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="TaskPaneApp">
  <Id>${id}</Id>
  <Version>${version}.0</Version>
  <ProviderName>${escapeXml(provider)}</ProviderName>
  <DefaultLocale>en-GB</DefaultLocale>
  <DisplayName DefaultValue="${escapeXml(name)}"/>
  <Description DefaultValue="${escapeXml(shortDescription)}"/>
  <IconUrl DefaultValue="${at(iconFile(32))}"/>
  <HighResolutionIconUrl DefaultValue="${at(iconFile(64))}"/>
  <SupportUrl DefaultValue="${at('about.html')}"/>
  <AppDomains>
    <AppDomain>${escapeXml(base.origin)}</AppDomain>
  </AppDomains>
  <Hosts>
    <Host Name="Workbook"/>
  </Hosts>
  <Requirements>
    <Sets DefaultMinVersion="${requirement.version}">
      <Set Name="${requirement.name}" MinVersion="${requirement.version}"/>
    </Sets>
  </Requirements>
  <DefaultSettings>
    <SourceLocation DefaultValue="${at('pane.html')}"/>
  </DefaultSettings>
  <Permissions>ReadWriteDocument</Permissions>
  <VersionOverrides xmlns="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="VersionOverridesV1_0">
    <Hosts>
      <Host xsi:type="Workbook">
        <Runtimes>
          <Runtime resid="Pane.Url" lifetime="long"/>
        </Runtimes>
        <AllFormFactors>
          <ExtensionPoint xsi:type="CustomFunctions">
            <Script>
              <SourceLocation resid="Functions.Script.Url"/>
            </Script>
            <Page>
              <SourceLocation resid="Pane.Url"/>
            </Page>
            <Metadata>
              <SourceLocation resid="Functions.Metadata.Url"/>
            </Metadata>
            <Namespace resid="Functions.Namespace"/>
          </ExtensionPoint>
        </AllFormFactors>
        <DesktopFormFactor>
          <FunctionFile resid="Pane.Url"/>
          <ExtensionPoint xsi:type="PrimaryCommandSurface">
            <OfficeTab id="TabHome">
              <Group id="Draughtbook.Group">
                <Label resid="Group.Label"/>
                <Icon>${icons}</Icon>
                <Control xsi:type="Button" id="Draughtbook.Open">
                  <Label resid="Button.Label"/>
                  <Supertip>
                    <Title resid="Button.Label"/>
                    <Description resid="Button.Tip"/>
                  </Supertip>
                  <Icon>${icons}</Icon>
                  <Action xsi:type="ShowTaskpane">
                    <TaskpaneId>Draughtbook.Pane</TaskpaneId>
                    <SourceLocation resid="Pane.Url"/>
                  </Action>
                </Control>
              </Group>
            </OfficeTab>
          </ExtensionPoint>
        </DesktopFormFactor>
      </Host>
    </Hosts>
    <Resources>
      <bt:Images>
        ${images.join('\n        ')}
      </bt:Images>
      <bt:Urls>
        <bt:Url id="Pane.Url" DefaultValue="${at('pane.html')}"/>
        <bt:Url id="Functions.Script.Url" DefaultValue="${at('functions.js')}"/>
        <bt:Url id="Functions.Metadata.Url" DefaultValue="${at('functions.json')}"/>
      </bt:Urls>
      <bt:ShortStrings>
        <bt:String id="Functions.Namespace" DefaultValue="${NAMESPACE}"/>
        <bt:String id="Group.Label" DefaultValue="${escapeXml(group)}"/>
        <bt:String id="Button.Label" DefaultValue="${escapeXml(button)}"/>
      </bt:ShortStrings>
      <bt:LongStrings>
        <bt:String id="Button.Tip" DefaultValue="${escapeXml(buttonTip)}"/>
      </bt:LongStrings>
    </Resources>
  </VersionOverrides>
</OfficeApp>
`
}

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;')
