"""sources, processes, 8-bit programs -> session -> dialect -> screens -> loss -> remedy -> report.

Documents take their own way: document -> blocks -> lines -> pages -> report.
"""
