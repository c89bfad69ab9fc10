"""Reports: the same answer on paper, made from results and never from a screen."""

from hoodwright.reports.close_up import close_up_svg
from hoodwright.reports.content import Facts, report_content
from hoodwright.reports.flow_figure import flow_svg
from hoodwright.reports.pdf import assessment_pdf
from hoodwright.reports.pressure_figure import pressure_svg
from hoodwright.reports.scene import scene_svg

__all__ = [
    "Facts",
    "assessment_pdf",
    "close_up_svg",
    "flow_svg",
    "pressure_svg",
    "report_content",
    "scene_svg",
]
