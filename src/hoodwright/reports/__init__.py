"""Reports: the same answer on paper, made from results and never from a screen."""

from hoodwright.reports.capture_figure import capture_svg
from hoodwright.reports.close_up import close_up_svg
from hoodwright.reports.content import Facts, report_content
from hoodwright.reports.duct_dxf import layout_dxf
from hoodwright.reports.duct_schedule import schedule_csv, schedule_xlsx
from hoodwright.reports.flow_figure import flow_svg
from hoodwright.reports.pdf import assessment_pdf, capture_pdf
from hoodwright.reports.pressure_figure import pressure_svg
from hoodwright.reports.scene import scene_svg
from hoodwright.reports.smoke_figure import smoke_svg

__all__ = [
    "Facts",
    "assessment_pdf",
    "capture_pdf",
    "capture_svg",
    "close_up_svg",
    "flow_svg",
    "layout_dxf",
    "pressure_svg",
    "report_content",
    "scene_svg",
    "schedule_csv",
    "schedule_xlsx",
    "smoke_svg",
]
