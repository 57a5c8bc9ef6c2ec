package surfeit.report.html;

import surfeit.report.figure.Figure;

/** The look of a report: quiet on a screen, light or dark as the reader prefers; black on white on A4. */
final class HtmlStyle {
    static final String CSS = """
        :root{color-scheme:light dark;--text:#1b1d20;--muted:#565b62;--rule:#d3d5d0;--paper:#fff;--focus:#17578f}
        @media screen and (prefers-color-scheme:dark){:root{--text:#e8e8e3;--muted:#a9aeb4;--rule:#3d4247;\
        --paper:#17191b;--focus:#86bdf0}}
        *{box-sizing:border-box}
        html{font-size:16px}
        body{margin:0;background:var(--paper);color:var(--text);font:1rem/1.5 sans-serif}
        main{max-width:54rem;margin:0 auto;padding:2.2rem 1.4rem 4rem}
        h1{font-size:1.6rem;line-height:1.25;margin:0 0 .7rem;overflow-wrap:anywhere}
        h2{font-size:1.14rem;margin:2.3rem 0 .6rem;padding-bottom:.25rem;border-bottom:2px solid var(--text);\
        break-after:avoid}
        p{margin:.5rem 0;max-width:44rem;overflow-wrap:anywhere}
        .opening p{color:var(--muted);font-size:1.05rem}
        ul{margin:.5rem 0;padding-left:1.15rem;max-width:46rem}
        li{margin:.3rem 0;overflow-wrap:anywhere}
        .found ul,.measured ul{list-style:none;padding:0}
        .measured li{margin:.1rem 0}
        .measured b{font-weight:400;color:var(--muted)}
        .found li{margin:.7rem 0;padding-left:.9rem;border-left:3px solid var(--rule);break-inside:avoid}
        .to_know li.warning::marker{content:"! "}
        .to_know li.warning b{text-transform:uppercase;letter-spacing:.03em}
        .references,.versions,.methods{font-size:.94rem}
        .versions li{overflow-wrap:anywhere}
        .wide{overflow-x:auto;margin:.7rem 0}
        .wide:focus-visible{outline:2px solid var(--focus);outline-offset:3px}
        table{border-collapse:collapse;width:100%;font-size:.93rem;font-variant-numeric:tabular-nums}
        th,td{text-align:left;vertical-align:top;padding:.32rem .9rem .32rem 0}
        th:last-child,td:last-child{padding-right:0}
        thead th{font-weight:400;color:var(--muted);border-bottom:1px solid var(--text);vertical-align:bottom;\
        line-height:1.25}
        thead{display:table-header-group}
        tbody{break-inside:avoid}
        tbody th{font-weight:600;overflow-wrap:anywhere;min-width:8rem}
        tbody+tbody tr:first-child>*{border-top:1px solid var(--rule)}
        .line{white-space:nowrap}
        .prose tbody{break-inside:auto}
        .prose tr{break-inside:avoid}
        .prose tbody tr:first-child{break-after:avoid}
        .prose td p{margin:0 0 .25rem;min-width:16rem}
        .about{color:var(--muted)}
        .sign{width:1em;height:1em;vertical-align:-.12em}
        figure{margin:1.3rem 0;break-inside:avoid}
        figcaption{font-size:.94rem;margin:0 0 .4rem;max-width:46rem;overflow-wrap:anywhere}
        .drawing{overflow-x:auto}
        .drawing svg{display:block;width:100%;min-width:44rem;height:auto}
        @page{size:A4;margin:17mm 17mm 19mm;\
        @bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
        @media print{
        html{font-size:10pt}
        body{line-height:1.42}
        main{max-width:none;padding:0}
        p,ul,figcaption{max-width:none}
        h2{margin-top:1.6rem}
        .wide,.drawing{overflow:visible}
        .drawing svg{min-width:0;max-height:215mm}
        table{font-size:.9rem}
        .prose td p{min-width:0}
        }
        """ + Figure.STYLE + "\n";

    private HtmlStyle() {
    }
}
