/** How often the office recalculates everything, and after one edit. */
const RECALCS = 5;
export const EDITS = 10;
/** What each edit adds to the use of the edited move. */
export const EDIT = 0.05;

/**
 * Opens a file, times hard recalculations and edits of one move (its quantity and value), and writes
 * milliseconds and the numbers before and after the last edit.
 */
const source = `
Sub Run(address As String, edited As String, out As String)
  Dim hidden(0) As New com.sun.star.beans.PropertyValue
  hidden(0).Name = "Hidden"
  hidden(0).Value = True
  doc = StarDesktop.loadComponentFromURL(address, "_blank", 0, hidden())
  n = FreeFile
  Open out For Output As #n
  doc.enableAutomaticCalculation(False)
  For i = 1 To ${RECALCS}
    start = GetSystemTicks()
    doc.calculateAll()
    Print #n, "recalc " &amp; (GetSystemTicks() - start)
  Next
  Numbers(doc, n, "before")
  moves = doc.Sheets.getByName("Moves")
  quantity = moves.getCellByPosition(1, CLng(edited))
  worth = moves.getCellByPosition(2, CLng(edited))
  rate = worth.getValue() / quantity.getValue()
  For i = 1 To ${EDITS}
    start = GetSystemTicks()
    quantity.setValue(quantity.getValue() - ${EDIT})
    worth.setValue(quantity.getValue() * rate)
    doc.calculate()
    Print #n, "edit " &amp; (GetSystemTicks() - start)
  Next
  Numbers(doc, n, "after")
  Close #n
  doc.close(True)
  StarDesktop.terminate()
End Sub

Sub Numbers(doc, n, word)
  stock = doc.Sheets.getByName("Stock")
  For r = 0 To 199
    Print #n, word &amp; " " &amp; Str(stock.getCellByPosition(1, r).getValue())
    Print #n, word &amp; " " &amp; Str(stock.getCellByPosition(2, r).getValue())
  Next
End Sub
`;

const xml = '<?xml version="1.0" encoding="UTF-8"?>\n';

/** The macro's library as LibreOffice keeps it in a profile. */
export const macroFiles = {
  'script.xlb': `${xml}<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false"><library:element library:name="Bench"/></library:library>`,
  'Bench.xba': `${xml}<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Bench" script:language="StarBasic">${source}</script:module>`,
};
