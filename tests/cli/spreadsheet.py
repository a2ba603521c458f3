# SPDX-License-Identifier: MIT
"""Says what a spreadsheet program would find in the file: types of cells, frozen rows, what is printed, formulas.

Read by openpyxl, a program that has nothing to do with the library that wrote the file."""

import sys

import openpyxl

book = openpyxl.load_workbook(sys.argv[1])
leaf = book.worksheets[0]
print("leaves:", ", ".join(book.sheetnames))
print("frozen:", leaf.freeze_panes)
print("printed:", leaf.print_area)
print("heads again:", leaf.print_title_rows)
heads = [cell.value for cell in leaf[1]]
rows = [dict(zip(heads, (cell.value for cell in row))) for row in leaf.iter_rows(min_row=2)]
numeric = [head for head in heads if {type(row[head]) for row in rows} - {type(None)} <= {int, float} and any(row[head] is not None for row in rows)]
print("numbers:", " ".join(numeric))
for row in rows:
    if row["Joint"] == "bearing cover screws" and row["Assembly"] == "drop box":
        print(f"{row['Joint']}: torque {row['Torque N·m']:.4f}, {row['Torque lbf·ft']:.4f}")
        break
last = next(row for row in rows if row["Joint"].endswith("=plug"))
print(f"{last['Joint']} of {last['Machine']}, {last['Assembly']}: torque {float(last['Torque N·m'])}, low {float(last['Low N·m'])}, high {float(last['High N·m'])}, remarks {last['Remarks']}")
print("formulas:", sum(cell.data_type == "f" for sheet in book for row in sheet.iter_rows() for cell in row))
print("last of the leaf:", book.worksheets[1].cell(book.worksheets[1].max_row, 1).value)
