package clip

import (
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode/utf16"
)

// powershellScript sets the clipboard from two lines of standard input, text
// and CF_HTML (may be empty), in base64: pipes into Windows programs change
// anything that is not ASCII. The HTML goes in as bytes, since Set-Clipboard
// -AsHtml counts its offsets in characters and breaks on "µ" or "°".
const powershellScript = `$ErrorActionPreference = 'Stop'
Add-Type -AssemblyName System.Windows.Forms
$lines = @([Console]::In.ReadToEnd() -split '\r?\n')
$data = New-Object System.Windows.Forms.DataObject
$data.SetText([Text.Encoding]::UTF8.GetString([Convert]::FromBase64String($lines[0])), 'UnicodeText')
if ($lines[1]) {
  $bytes = [Convert]::FromBase64String($lines[1])
  $data.SetData('HTML Format', (New-Object IO.MemoryStream(,$bytes)))
}
[System.Windows.Forms.Clipboard]::SetDataObject($data, $true, 5, 100)`

// A clipboard can only be set from a single-threaded apartment.
var powershellArgs = []string{"-NoProfile", "-NonInteractive", "-STA", "-Command", powershellScript}

func powershellInput(p Payload) string {
	var html string
	if p.HTML != "" {
		html = cfHTML(p.HTML)
	}
	encode := base64.StdEncoding.EncodeToString
	return encode([]byte(crlf(p.Text))) + "\n" + encode([]byte(html)) + "\n"
}

// cfHTML wraps a fragment in the "HTML Format" of the Windows clipboard: a
// header with byte offsets of the document and of the fragment in it
// ("HTML Clipboard Format", version 0.9).
func cfHTML(fragment string) string {
	const (
		header = "Version:0.9\r\nStartHTML:%010d\r\nEndHTML:%010d\r\nStartFragment:%010d\r\nEndFragment:%010d\r\n"
		before = "<html><body>\r\n<!--StartFragment-->"
		after  = "<!--EndFragment-->\r\n</body></html>"
	)
	start := len(fmt.Sprintf(header, 0, 0, 0, 0))
	from := start + len(before)
	to := from + len(fragment)
	return fmt.Sprintf(header, start, to+len(after), from, to) + before + fragment + after
}

// appleScript sets the clipboard to text, or to text and HTML at once. The HTML
// is given in hexadecimal; in the text only the quote and the backslash need
// escaping.
func appleScript(p Payload) string {
	text := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(p.Text) + `"`
	if p.HTML == "" {
		return "set the clipboard to " + text + "\n"
	}
	return fmt.Sprintf("set the clipboard to {string:%s, «class HTML»:«data HTML%X»}\n", text, page(p))
}

// crlf ends lines the way Windows programs expect in pasted text.
func crlf(text string) string {
	return strings.ReplaceAll(text, "\n", "\r\n")
}

// utf16LE encodes text as clip.exe takes it, with the byte order mark by which
// it knows.
func utf16LE(text string) string {
	var out []byte
	for _, unit := range utf16.Encode([]rune("\uFEFF" + text)) {
		out = binary.LittleEndian.AppendUint16(out, unit)
	}
	return string(out)
}
