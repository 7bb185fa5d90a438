using Contam.Reports.Drawing;

namespace Contam.Reports.Sheets;

/// <summary>How the sheet looks: black on white, told apart by border and word, so that paper loses nothing.</summary>
internal static class SheetStyle
{
    /// <summary>The rules; every class has the prefix <c>cs-</c>.</summary>
    /// <param name="mark">Letters and digits that stand at the foot of every printed page.</param>
    public static string Of(string mark) => PrintPieces.Style + Sheet.Replace("$MARK", mark, StringComparison.Ordinal);

    private const string Sheet = """

        :root{color-scheme:light}
        *{box-sizing:border-box}
        [hidden]{display:none!important}
        body{margin:0 auto;padding:1rem;max-width:60rem;font:1rem/1.45 system-ui,-apple-system,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;color:#111;background:#fff;overflow-wrap:anywhere}
        h1{font-size:1.5rem;line-height:1.2;margin:0 0 .5rem}
        h2{font-size:1.25rem;margin:2rem 0 .5rem;padding-top:.4rem;border-top:3px solid #111}
        h3{font-size:1.05rem;margin:1.4rem 0 .4rem}
        p{margin:.4rem 0}
        a{color:#0b3fa8}
        :focus-visible{outline:3px solid #0b3fa8;outline-offset:2px}
        button,select{font:inherit;color:#111;background:#fff;border:2px solid #111;border-radius:4px;padding:.3rem .6rem;min-height:2.5rem;max-width:100%}
        button[aria-pressed=true]{background:#111;color:#fff}
        .cs-small{font-size:.875rem;color:#444}
        .cs-fields{display:none}
        nav ul{list-style:none;margin:.8rem 0;padding:0;display:flex;flex-wrap:wrap;gap:.2rem 1.2rem}
        nav a{display:inline-block;padding:.3rem 0}
        .cs-tools{border:2px solid #111;border-radius:4px;padding:.4rem .8rem;margin:1rem 0}
        .cs-tools p{display:flex;flex-wrap:wrap;gap:.4rem .6rem;align-items:center}
        .cs-tools p:empty{display:none}
        .cs-cautions{list-style:none;margin:0;padding:0}
        .cs-cautions li{margin:.5rem 0;display:flex}
        .cs-cautions b{flex:none;width:2.6rem}
        .cs-cautions li:target{outline:3px solid #0b3fa8;outline-offset:2px}
        .cs-scroll{overflow:auto;max-height:85vh;border:1px solid #767676}.cs-whole svg{width:100%;height:auto}
        .cs-scroll svg{display:block}
        .cs-scroll [role=button]{cursor:pointer}
        .cs-scroll [role=button]:focus-visible{outline:none}
        .cs-scroll [role=button]:focus-visible rect{stroke:#0b3fa8;stroke-width:5}
        .cs-lights{display:flex;flex-wrap:wrap;gap:.6rem;align-items:center}
        table{border-collapse:collapse;width:100%;margin:.4rem 0;font-size:.9375rem}
        th,td{border:1px solid #767676;padding:.3rem .45rem;text-align:left;vertical-align:top}
        thead th{border-bottom:3px double #111}
        tbody th{font-weight:600}
        .cs-parts,.cs-also,.cs-seen,.cs-bars{table-layout:fixed}
        .cs-parts th:nth-child(1){width:32%}.cs-parts th:nth-child(2){width:24%}
        .cs-also th:nth-child(1),.cs-seen th:nth-child(1){width:36%}
        summary{cursor:pointer}
        details .cs-way{margin:.4rem 0;padding-left:1.4rem}
        .cs-part:target th,.cs-part.cs-lit th{outline:3px solid #0b3fa8;outline-offset:-3px}
        .cs-steps{list-style:none;margin:0;padding:0}
        .cs-step{border-bottom:1px solid #999;padding:.5rem 0}
        .cs-line{display:flex;gap:.6rem;align-items:flex-start}
        .cs-line label{flex:1;min-width:0}
        .cs-step p{margin:0 0 .3rem 2.2rem}
        .cs-step p.cs-careful{margin:0 0 .5rem;padding:.3rem .6rem;border:2px solid #111;border-left-width:8px}
        .cs-boxes label{display:inline-flex;align-items:center;gap:.3rem;min-width:4rem;min-height:2.2rem}
        .cs-step .cs-facts{margin:.2rem 0 0 2.2rem;font-size:.875rem;color:#444}
        .cs-tick{appearance:none;-webkit-appearance:none;flex:none;width:1.6rem;height:1.6rem;margin:0;border:2px solid #111;border-radius:3px;background:#fff;display:inline-grid;place-content:center;font:inherit;vertical-align:middle}
        .cs-tick:checked::before{content:"\2713";font-size:1.3rem;font-weight:bold;line-height:1}
        .cs-tick[type=radio]{border-radius:50%}
        .cs-far dt{font-weight:bold}.cs-letters{white-space:nowrap}.cs-cautions .cs-letters{flex:none;width:4.6rem;font-weight:bold}.cs-cautions li .cs-state{width:auto}
        .cs-step .cs-letters,.cs-order .cs-letters,.cs-parts .cs-letters{border:2px solid #111;border-radius:3px;padding:0 .25rem}
        .cs-state:empty{display:none}.cs-left{font-weight:bold}.cs-left:empty{display:none}
        .cs-outcomes{margin:.4rem 0 .3rem 2.2rem;border:2px solid #111;border-left-width:8px;padding:.2rem .6rem}.cs-outcomes p,.cs-step .cs-outcomes p{margin:.3rem 0}
        .cs-struck .cs-line label,.cs-struck [role=group]>p,.cs-struck.cs-part th,.cs-struck.cs-wanted label{text-decoration:line-through}
        .cs-struck .cs-state,.cs-hangs .cs-state{display:inline-block;text-decoration:none;font-style:italic}
        .cs-order td:nth-child(1){width:3.2rem}.cs-order td:nth-child(2){white-space:nowrap}
        .cs-bars th:nth-child(1){width:28%}.cs-bars th:nth-child(2){width:24%}
        .cs-row{display:block;width:100%;height:20px;overflow:visible}
        .cs-row text{font-size:.75rem;fill:#111}
        .cs-bar{fill:#fff;stroke:#111;stroke-width:1}.cs-critical{fill:#111}.cs-waits{stroke-dasharray:4 3}
        .cs-mark{stroke:#bbb}
        @media (max-width:40rem){body{padding:.75rem}table{font-size:.875rem}th,td{padding:.25rem .3rem}.cs-step p,.cs-step .cs-facts,.cs-outcomes{margin-left:0}}
        @page{@bottom-left{content:"Plan $MARK";font:9pt sans-serif}}
        @media print{
        body{padding:0;max-width:none;font-size:10pt}
        h1{font-size:15pt}h2{font-size:12.5pt;margin-top:14pt}h3{font-size:11pt}
        table,.cs-step .cs-facts{font-size:9.5pt}
        .cs-open,nav,.cs-tools,.cs-scroll,.cs-lights,#how-to-light,.cs-show{display:none!important}
        .cs-filtered .cs-tools{display:block!important}.cs-filtered .cs-tools p:not(#filtered){display:none}
        a{color:inherit;text-decoration:none}
        h2,h3{break-after:avoid}
        thead{display:table-header-group}
        tr,.cs-step,.cs-outcomes,.cs-cautions li,.cs-fields{break-inside:avoid}
        p,li{orphans:3;widows:3}
        .cs-tick{width:12pt;height:12pt;border-width:1.2pt}
        .cs-tick:checked::before{font-size:10pt}
        .cs-boxes label{min-width:34pt;min-height:15pt}
        .cs-fields{display:flex;gap:12pt;margin:8pt 0}
        .cs-fields span{flex:1;border-bottom:1pt solid #111;padding-bottom:1pt;min-height:16pt}
        summary{list-style:none}summary::-webkit-details-marker{display:none}
        }

        """;
}
