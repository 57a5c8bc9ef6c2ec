classdef SurfeitLab
    % SurfeitLab asks a Surfeit service from MATLAB R2020a or newer, without a toolbox.
    % Not run by the project's tests: the machines that run them have no MATLAB.
    %
    %   lab = SurfeitLab("http://127.0.0.1:8420");        % the token is read from SURFEIT_TOKEN
    %   lab.describe("lot-7", struct("alloy", "ag-cu-eutectic", "beam_energy_kev", 15));
    %   lab.postTable("lot-7", "my-spots.csv");
    %   answer = lab.segregation("lot-7");                 % a struct, as the service's JSON
    %   t = lab.results("sample", "lot-7");                % a table, one row per spot and element
    %   cu = t(t.element == "Cu", :);
    %   boxchart(categorical(cu.feature), cu.atomic_percent)
    %
    % A refusal becomes a MATLAB error; what the service says of it stands in the answer that curl or /docs shows.

    properties (SetAccess = private)
        Url
    end

    properties (Access = private)
        Token
    end

    methods
        function lab = SurfeitLab(url, token)
            % The address of the service, and a token where one is needed.
            if nargin < 1
                url = "http://127.0.0.1:8420";
            end
            if nargin < 2
                token = getenv("SURFEIT_TOKEN");
            end
            lab.Url = string(url);
            lab.Token = char(token);
        end

        function sample = describe(lab, name, description)
            % Gives a sample its description; the same description again changes nothing.
            sample = webwrite(lab.address("samples/" + name), jsonencode(description), ...
                lab.options("RequestMethod", "put", "MediaType", "application/json", "ContentType", "json"));
        end

        function report = postTable(lab, sample, file)
            % Records a table as the workstation exported it; the same file again changes nothing.
            text = fileread(file);
            report = webwrite(lab.address("samples/" + sample + "/spots"), text, ...
                lab.options("MediaType", "text/csv", "ContentType", "json"));
        end

        function answer = segregation(lab, sample)
            % What the spots of a sample show.
            answer = webread(lab.address("samples/" + sample + "/segregation.json"), ...
                lab.options("ContentType", "json"));
        end

        function text = report(lab, sample)
            % The same as a text to read.
            text = webread(lab.address("samples/" + sample + "/segregation.md"), lab.options("ContentType", "text"));
        end

        function answer = compare(lab, a, b)
            % Two samples against each other.
            answer = webread(lab.address("comparisons.json"), "a", a, "b", b, lab.options("ContentType", "json"));
        end

        function rows = results(lab, varargin)
            % Every result as a table; filters as pairs of name and value: "sample", "lot-7", "element", "Cu".
            rows = webread(lab.address("results.csv"), varargin{:}, lab.options("ContentType", "table"));
            texts = rows.Properties.VariableNames(varfun(@iscell, rows, "OutputFormat", "uniform"));
            for name = texts
                rows.(name{1}) = string(rows.(name{1}));
            end
        end
    end

    methods (Access = private)
        function address = address(lab, path)
            address = lab.Url + "/v1/" + path;
        end

        function options = options(lab, varargin)
            % A token goes as the password of Basic, with any user name.
            options = weboptions("Timeout", 60, varargin{:});
            if ~isempty(lab.Token)
                options.Username = "matlab";
                options.Password = lab.Token;
            end
        end
    end
end
